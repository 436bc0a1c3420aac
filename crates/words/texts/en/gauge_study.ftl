### Gauge study

# What is refused of a gauge study.
study-fault-part-unnamed = a part of the study has no name
    .next = Give each part its own name
study-fault-builder-unnamed = a builder of the study has no name
    .next = Give each builder their own name
study-fault-part-twice = the part “{ $name }” is named twice
    .next = Give each its own name
study-fault-builder-twice = the builder “{ $name }” is named twice
    .next = Give each their own name
study-fault-too-few = { $parts } parts, { $builders } builders and { $trials } trials are too few
    .next = Take at least 5 parts, 2 builders and 2 trials; 10, 3 and 3 are recommended
study-fault-too-many = { $parts } parts, { $builders } builders and { $trials } trials are more than a study takes
    .next = Take at most 20 parts, 5 builders and 5 trials
study-fault-not-finished = { $n } of { $of } readings are still to be taken
    .next = Go on with the study
