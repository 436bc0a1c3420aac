### Usual models: nobody's, to begin with

usual-title = Usual models
usual-intro = These models are nobody's: figures that are usual in the trade. Keep some to begin with, weigh your parts, and replace the figures with your maker's when you have them. Follow the maker's sheet of your own adhesive for its cure.
usual-keep = Keep the ticked models
usual-there = in your shop
usual-none-ticked = No model is ticked.
usual-none-ticked-next = Tick the models to keep.
usual-sources = Where the figures come from
usual-sources-open = Figure by figure
usual-line-there = , in your shop
usual-done =
    { $kept ->
        [0] No new model.
        [one] One model kept.
       *[other] { $kept } models kept.
    } { $there ->
        [0] { "" }
        [one] One was in the shop before and stays as it is.
       *[other] { $there } were in the shop before and stay as they are.
    }
usual-fault-no-codes = no usual model is named
    .next = Give the codes of those to keep

usual-name-blade-irons = Blade irons
usual-name-cavity-irons = Cavity irons
usual-name-wedges = Wedges
usual-name-driver = Driver
usual-name-fairway-woods = Fairway woods
usual-name-hybrids = Hybrids
usual-name-putter = Putter
usual-name-left-hand = { $of }, left-hand
usual-name-steel-iron-shaft = Steel iron shaft, parallel, { MASS($mass_g, digits: 0) }
usual-name-steel-taper-shaft = Steel iron shaft, taper, { MASS($mass_g, digits: 0) }
usual-name-graphite-iron-shaft = Graphite iron shaft, { MASS($mass_g, digits: 0) }
usual-name-graphite-wood-shaft = Graphite wood shaft, { MASS($mass_g, digits: 0) }
usual-name-graphite-hybrid-shaft = Graphite hybrid shaft, { MASS($mass_g, digits: 0) }
usual-name-steel-putter-shaft = Steel putter shaft
usual-name-undersize-grip = Undersize grip
usual-name-standard-grip = Standard grip
usual-name-midsize-grip = Midsize grip
usual-name-jumbo-grip = Jumbo grip
usual-name-putter-grip = Putter grip
usual-name-tip-weight = Brass tip weight, { MASS($mass_g, digits: 0) }
usual-name-ferrule = Ferrule, { LENGTH($inside_mm, digits: 3) }
usual-name-double-sided-tape = Double-sided tape
usual-name-build-up-tape = Build-up tape
usual-name-quick-adhesive = Two-part adhesive, quick
usual-name-day-adhesive = Two-part adhesive, overnight
usual-name-slow-adhesive = Two-part adhesive, slow

# Where a figure of a usual model comes from.
usual-source-common-practice = Common practice, no source
usual-source-seven-grams = Common practice, no source: the same step of mass from number to number
usual-source-half-inch = Common practice, no source: the same step of length from number to number
usual-source-sold-sizes = Sizes such parts are sold in, from memory
usual-source-mass-class = The class it stands for
usual-source-from-memory = From memory
usual-source-wide-guess = A wide guess, no source
usual-source-cautious = On the careful side, no source; the maker's sheet comes first
usual-source-brass = From the density of brass and the thickness of the pin
usual-source-densities = From the two densities
