### Stiffness along one shaft, from its own readings

stiffness-fault-count =
    { $n ->
        [0] a shaft without readings
       *[other] { $n } readings of one shaft, and it takes { $most } at most
    }
    .next = Read it at three to eight clamp lengths
stiffness-fault-one-figure = reading { $place } needs a frequency or a deflection, one of the two
    .next = Enter what was read, and leave the other empty
stiffness-fault-no-blank = the model of shaft { $code } has no blank for its number
    .next = Put the number of the shaft right, or add the blank to its model
stiffness-fault-not-in-hand = shaft { $code } is not in hand: it is in a club, put aside or on order
    .next = Read a raw shaft before it is cut
stiffness-fault-not-a-shaft = part { $code } is not a shaft
    .next = Give the code of a shaft

profile-page = Stiffness of { $code }
profile-open = Stiffness along the shaft
profile-about = Clamp the raw shaft at several lengths, pluck it with the test weight at its tip, and enter what each clamp length reads. Or hang a weight on it and enter how far it goes down. The forecast of its club uses its own line in place of the model’s.
profile-none = This shaft was not read. The line is its model’s: { $from }.
profile-read-by = Read by { $by }, { $at }.
profile-cut-since = The shaft was cut since it was read. Its readings are not used any more: read it again.
profile-band = Known to ± { $percent } % between clamp and tip; by the model alone ± { $model } %.
profile-told = { $n } readings say { $figures } independent things about the line.
profile-enough =
    { $n ->
        [one] One frequency at the usual clamp length says nearly all: ± { $percent } %.
       *[other] { $n } frequencies say nearly all that a clamp can, ± { $percent } %: spread the clamp lengths evenly from { LENGTH($from_mm, digits: 1) } to { LENGTH($to_mm, digits: 1) }.
    }
profile-gives = By these readings a shaft acts { LENGTH($gives_mm, digits: 1) } ± { LENGTH($band_mm, digits: 1) } longer in this clamp than it is.
profile-doubted = Reading { $place } does not fit the others: { $read } read, { $fitted } by the line. Read it again: is the clamp length right?
profile-readings = Readings
profile-held = { $n }: in the clamp
profile-held-missing = Reading { $n }: how much of the butt was in the clamp?
profile-cpm = Frequency
profile-deflection = or deflection
profile-more = More readings
profile-weight = Weight on it
profile-weight-hint = The same for all readings
profile-place = Centre of the weight beyond the tip
profile-place-hint = Negative where it sits or hangs on the shaft
profile-keep = Keep the readings
profile-look = Show without keeping
profile-take-back = Take the readings back
profile-place-column = From the tip
profile-stiffness-column = Stiffness
profile-band-column = ±
profile-model-column = Model
profile-caution = Wear eye protection: a plucked shaft with a weight at its tip can throw it. Fix the weight so that it cannot come off.
profile-line = { LENGTH($place_mm, digits: 0) } from the tip: { $own } ± { $band } %, model { $model } ± { $model_band } %
