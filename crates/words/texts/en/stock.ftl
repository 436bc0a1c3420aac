### Stock

# What is refused of models and parts in stock.
stock-fault-model-code-taken = “{ $code }” is the code of a { $kind } already
    .next = Choose another code
stock-fault-models-unwritable = the models could not be written: { $log }
    .next = Look at the figures of the models
stock-fault-not-by-hand = { $code } is { $state } and cannot be made { $to } by hand
    .next = Held and used come from jobs: change the plan of its club instead
stock-fault-bad-code = “{ $code }” cannot be the code of a part
    .next = Give the code on its label, up to 64 letters
stock-fault-not-added-as = { $code } cannot be added as { $state }
    .next = Held and used come from jobs: add it as free
