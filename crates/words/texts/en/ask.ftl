### Ask

# What is refused of asking for heads by weight.
ask-fault-inside-fulcrum = the { $number }'s head is between the stop and the fulcrum of the scale
    .next = Check the length: a club shorter than 14 inches has no swing weight on this scale
