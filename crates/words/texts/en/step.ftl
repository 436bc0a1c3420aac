### Steps of a job

# The row of steps over a page of the bench.
step-row = Steps
step-done = done
step-left-out = left out
step-doubted = doubted
step-of = { $at } of { $n }

# The steps of a new shop, which it may rename: what the builder calls them and what to do.
step-new-received = Received
step-new-received-say = Loft and lie of the loose head: can it be bent to the sheet before it is glued?
step-new-weighed = Weighed
step-new-weighed-say = Weigh again what rides in the tray.
step-new-cut = Cut
step-new-cut-say = Tip first, then the butt. Length and mass of the cut shaft.
step-new-soft-side = Soft side
step-new-soft-side-say = Find the soft side and mark it; degrees from the label, clockwise seen from the butt.
step-new-cpm = Frequency
step-new-cpm-say = Clamp the butt, pluck, read.
step-new-prepared = Prepared
step-new-prepared-say = Tips roughened, hosels clean and dry.
step-new-dry = Dry
step-new-dry-say = Head and ferrule on, no grip, nothing glued. Read the swing weight.
step-new-tip = Tip weight
step-new-tip-say = The weight in the tip, still dry. Read the swing weight.
step-new-glue = Glue
step-new-glue-say = Weight, ferrule and head glued, shaft turned to its mark, wiped.
step-new-turned = Turned
step-new-turned-say = Turn the ferrule down to the hosel.
step-new-cured = Cured
step-new-cured-say = Ferrule turned, no grip. Read the swing weight: the grip is chosen after this.
step-new-gripped = Gripped
step-new-gripped-say = Tape and grip on, solvent still in it. Read the swing weight.
step-new-finish = Finish
step-new-finish-say = Solvent dry. Swing weight, total mass and length of the finished club.
step-new-bend = Bend
step-new-bend-say = Bend to the sheet, then read both.
step-new-hand-over = Hand over
step-new-hand-over-say = Checked, wiped, in the bag with its record.

# Steps of work on a club that was there before.
step-new-arrived = Arrived
step-new-arrived-say = Read the club as it came, before anything is done with it.
step-new-stripped = Stripped
step-new-stripped-say = Old grip and tape off. Weigh each, then read the bare club: this says most.
step-new-shortened = Shortened
step-new-shortened-say = Butt cut. Length of the shaft from the ground, then the swing weight without a grip.
step-new-extended = Extended
step-new-extended-say = Length of the shaft, then the swing weight without a grip.
step-new-extension = Extension
step-new-extension-say = Butt roughened inside and clean, piece glued in to its mark, wiped. It cures as a joint does.
step-new-looked-joint = Looked at
step-new-looked-joint-say = Turn and pull the head by hand: does it move, has the ferrule crept, is there rust or white dust at the hosel? Look for cracks in hosel and tip with a lens. A cracked hosel or a split, soft or kinked tip is not used again.
step-new-looked-rattle = Looked for
step-new-looked-rattle-say = Shake it head up, head down, beside the ear. In the shaft: a loose tip weight or crumbs of adhesive, out through the vent of the grip or by opening the joint. In a hollow head: the maker's sheet. A joint that clicks is a loose head.
step-new-looked-broken = Looked at
step-new-looked-broken-say = Where and how did it break? At the hosel: look for a sharp edge, a bore without a cone, rust. Look for cracks in the hosel with a lens. The head may be used again if its hosel is round and sound, a grip if it comes off whole; shaft, ferrule and tip weight are new.
step-new-weighted = Weight on
step-new-weighted-say = Note what you put on and where, then read the swing weight.
step-new-pulled = Pulled
step-new-pulled-say = Head pulled and its bore cleaned. Weigh the head: what the old joint held is found out now.
