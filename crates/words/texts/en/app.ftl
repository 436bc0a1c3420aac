### App

# What stands in the way of a use case.
way-waits = { $step } waits for { $strength } until { $until_at }
    .next = Let it cure, or override with a reason
way-not-glued = { $step } needs { $strength }, but club { $slot } is in no batch of adhesive
    .next = Glue it, or override with a reason
way-open = before “{ $step }” something is open: { $clubs }
    .next = Clear it, or give a reason for going on as it is
way-open-club = the { $number }: { $points }
way-internal = the program made a mistake: { $log }. Nothing was saved
    .next = Try again; if it comes back, report this message to the makers of the program
way-entry = entry { $n } of the list: { $what }
clock-doubt-behind-newest = this machine's clock shows { $now_at }, but an entry was made on { $newest_at }
    .next = Nothing is kept until it is right. Set the clock; if it is right, confirm it on the Today page
clock-doubt-jumped = this machine's clock was changed from { $from_at } to { $to_at } while the program ran
    .next = Until somebody confirms it on the Today page, no glue is mixed and no cure counts as done. Check the clock, and when the last batches were mixed

# Where to look up what was not found.
look-up-stock = Look it up under Stock
look-up-models = Look it up under Stock, Models
look-up-usual-models = Look it up under Stock, Models, Usual models
look-up-on-label = Scan or type the code on its label
look-up-today = Look it up on the Today page
look-up-orders = Look it up under Stock, Orders
look-up-add-model = Add it under Stock, Models first
look-up-sheets = Look it up under Sheets
look-up-customers = Look it up under Sheets, Customers
look-up-layouts = Look it up under Stock, Import a list
look-up-glue = Look it up under Glue
look-up-card = Scan the code on the job card again, or type it
look-up-code = Scan the code again, or type what is printed under it
look-up-find = Type a customer’s name, “job 1”, a code, a lot or an order, or scan a label
look-up-choose = Choose another in its place
look-up-load-job = Load the job again
look-up-load-club = Load the club again and look at its readings
look-up-plan-again = Plan the job again
look-up-stock-changed = Plan again: the stock has changed
look-up-scales = Look it up under Scales
look-up-places = The tray has places 1 to { $most }
look-up-add-model-of = Add the { $kind } model first
look-up-load-scale = Load the page of the { $name } again
look-up-study-places = This study has the places 0 to { $most }
look-up-clubs = Look it up on the Clubs page
look-up-has-kinds = The kinds are { $known }
look-up-has-steps = This job has { $known }
look-up-has-weights = The { $name } has { $known }

# What is refused of confirming the clock.
clock-fault-nothing-wrong = nothing is wrong with the clock
    .next = Nothing needs to be done

# What every change needs.
need-fault-no-plan = job { $job } has no plan yet
    .next = Accept a plan first, so that there is something to expect
need-fault-job-over = job { $job } is { $state }
    .next = Its record stays; make a new job for more work on these clubs
need-fault-no-name = nobody is named
    .next = Give the name of who does it: the record keeps it
need-fault-outside-job = { $at } cannot be a time of this job, which was made at { $made_at }; it is { $now_at } now
    .next = Leave the time out for now, or give the time when it happened
need-fault-stale = the { $number } was changed on another screen in the meantime
    .next = Nothing was overwritten. Look at what changed, then enter it again
meanwhile-read = { $what } of the { $number } was read as { $there } on another screen in the meantime, by { $by }; here { $here } was typed
    .next = Nothing was overwritten. Read it once more and enter what it shows
need-fault-no-reason = a reason is needed: the record keeps it
    .next = Write in a few words why
