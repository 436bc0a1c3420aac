### Command: what the program prints at a terminal

# What is refused of loading the invented shop.
demo-fault-another-shop = { $place } holds another shop than the invented one, so nothing was changed
    .next = Leave --database out: the invented shop has a database of its own

# What sort of failure, in a few words.
failure-title-check = Please check
failure-title-not-found = Not found
failure-title-conflict = Conflict
failure-title-internal = Internal error
failure-title-outside = Cannot serve

# What the command line itself refuses.
command-fault-file = { $path } cannot be used: { $log }
    .next = Check the path and its permissions
command-fault-arguments = { $text }
command-fault-demo-is-at = The invented shop of `setwright demo` is at { $place }
command-fault-former-shop = this folder holds { $file }, the shop of an earlier version, which used the folder that it was started in
    .next = Move it to { $place }, or name it with --database sqlite:{ $file }; nothing was changed
command-fault-config = { $path }: { $log }
command-fault-no-home = this user has no home folder to keep a shop in
    .next = Name the database with --database
command-fault-machine-name = “{ $name }” is not the name of a machine
    .next = Give it without http:// and without the port: bench.local
command-fault-questioned = { $what }
    .next =
        { $next ->
            [none] Correct it, or keep it with --sure
           *[other] { $next }, or keep it with --sure
        }
command-fault-check-question = { $what }
    .next = { $next } To keep it as it is: --as-it-is
command-fault-not-a-date = “{ $text }” is not a date
    .next = Write it like 2026-03-10
command-fault-not-a-size = “{ $text }” is not the size of a label
    .next = Write width and height: { $example }
command-fault-not-job-count = “{ $text }” is not JOB:COUNT
    .next = For example --for 3:2
command-fault-not-slot-code = “{ $text }” is not SLOT:CODE
    .next = For example --keep 3:H-0412
command-fault-not-a-pick = “{ $text }” is not SLOT:KIND:CODE
    .next = For example --pick 3:tip_weight:TRAY-4, or --pick 3:grip:OL-0412
command-fault-not-prices = { $path } is no such document: { $what }
    .next = Mend the file; “setwright prices” and “setwright quote … --json” print what one looks like
command-fault-not-a-sheet = { $path } is not a sheet file: { $what }
    .next = Its form is printed by: setwright sheet schema
command-fault-sheet-stops =
    { $n ->
        [one] one finding must be put right before this sheet can be built
       *[other] { $n } findings must be put right before this sheet can be built
    }
command-fault-not-a-parity = “{ $text }” is not a parity
    .next = Give none, even or odd
command-fault-port-never-opened = the port never opened: { $log }
command-fault-rows-refused =
    { $n ->
        [one] one row was refused; the others are kept
       *[other] { $n } rows were refused; the others are kept
    }
    .next = Correct the refused rows and import them again
command-fault-not-utf8 = the file is not text in UTF-8
command-fault-no-equal-sign = { $option } “{ $text }” has no “=”
    .next = Write for example { $option } { $example }
command-fault-option-twice = { $option } names the { $name } twice
    .next = Give it once
command-fault-say-replace = nothing was changed
    .next = To put the backup in the place of the shop: setwright restore { $backup } --replace
command-fault-shop-damaged = { $path } is damaged: { $log }
    .next = Stop entering; put the last backup in its place: setwright restore FILE
command-fault-no-codes = no codes are given
    .next = Write them as --codes H7-014,H7-015
command-fault-unwritable = the answer could not be written to standard output: { $log }
command-fault-answer-unwritable = the answer could not be written: { $log }
command-fault-listen-taken = { $place } cannot be listened on: { $log }
    .next = Stop what listens there, or choose another address with --listen
command-fault-listen-unknown = { $place } cannot be listened on: { $log }
    .next = Give an address and a port with --listen, for example 127.0.0.1:7340
command-fault-open-to-network = { $place } can be reached from the network
    .next = If tablets are to reach the shop, add --open-to-network: each needs a key to come in. Otherwise leave --listen out
command-fault-half-a-certificate = a certificate needs its key, and a key its certificate
    .next = Give both, certificate and certificate_key, or neither
command-fault-no-address = no address: { $log }
command-fault-serving-ended = serving ended: { $log }
command-fault-threads = the program could not start its threads: { $log }
command-fault-no-recording = { $topic } takes no recording: only pluck does
command-fault-input = standard input could not be read: { $log }
command-fault-input-not-json = standard input is not a JSON document: { $what }
    .next = See one that works with: setwright calc { $topic } --example
command-fault-simulation = { $what }
command-fault-no-trouble = there is no trouble “{ $key }”
    .next = Known are { $known }
command-fault-not-in-list = “{ $key }” is not one of the choices
    .next = Known are { $known }
command-fault-no-builder = no builder is called “{ $name }”
    .next = Known are { $known }
command-fault-no-deed = “{ $text }” cannot be done with a part
    .next = Give reserve, return, use, scrap, restore, correct, pull or miscut
command-fault-not-a-supply = “{ $text }” is not MODEL:NUMBER=MEAN,SCATTER
    .next = For example --supply WREN-I:7=267,1.5
command-fault-no-set = no sheet is given
    .next = Give a sheet file with --set
command-fault-not-a-weight = “{ $text }” is not NAME=VALUE
    .next = For example --weight cpm_per_tolerance=0.006
command-fault-not-a-lock = “{ $text }” keeps nothing
    .next = Write a place and a code, for example 3:H-0412

# Why a simulation could not be run.
simulation-setting = { $what } is { FIGURE($value) }: it must be between { FIGURE($low) } and { FIGURE($high) }
    .next = Change it and start again
simulation-advice = job { $job } of shop { $shop }, { $way }: { $what }. This is a fault of the program
    .next = Please report it with the seed
simulation-kind = no kind of job “{ $kind }” is simulated
    .next = Use regrip, shorten, lengthen, rebalance, reshaft or loose_head
no-finish-unplanned = the club has no plan, so it has no forecast
simulation-unplanned = job { $job } of shop { $shop }: no parts for club { $club }. This is a fault of the simulation
    .next = Please report it
setting-jobs = the number of jobs
setting-known-after = the number of jobs after which a shop is known
setting-blunders = the share of blunders
setting-scatter = the factor of scatter

# `setwright record`.
command-record-job = Job { $job }, { $player }, { $state }
command-record-due = { $shop }, { $hand }, due { $due_on }
command-record-club = { CAPITAL($club) }, card { $card }: { $parts }
command-record-part = { $kind } { $code }
command-record-unplanned = not planned yet
command-record-sheet = sheet
command-record-built = built
command-record-off-by = off by
command-none = -

# `setwright job`, `take-back`, `stand-by`, `pass`, `change`.
command-job-number = job
command-job-player = player
command-job-due = due
command-job-state = state
command-job-clubs = clubs
command-job-next = next
command-job-slot = place
command-job-club = club
command-job-reads = will read
command-job-finish = finishes
command-job-last = last reading
command-job-reading = { $typed } ({ $step })
command-taken-back = The reading of club { $number } is taken back.
command-stood-by = The reading of club { $number } stands.
command-let-pass = Club { $number } may pass to { $step }.
command-fault-nothing-read = no reading of the club at place { $slot } of job { $job } stands
    .next = Look at the job: setwright job show { $job }

# A plan.
command-plan-column-club = club
command-plan-column-head = head
command-plan-column-shaft = shaft
command-plan-column-grip = grip
command-plan-column-adapter = adapter
command-plan-column-screw = screw
command-plan-column-tip = tip weight
command-plan-column-off-tip = off the tip
command-plan-column-off-butt = off the butt
command-plan-column-cut-to = cut to
command-plan-column-dry = reads dry
command-plan-column-finish = finishes
command-plan-column-sheet = sheet
command-plan-missing = Missing for the { club-number }: { $lack }
command-plan-frequency = The { $club }: { $shaft }
command-plan-proven = Proven best for the stated cost.
command-plan-best = Best found so far.
command-plan-held = The parts are held.
command-plan-choosing = choosing parts
command-lock-wrong = “{ $typed }” is not SLOT:CODE. For example --keep 3:H-0412

# Matching one sheet, or a day's jobs.
command-match-club =
    head { $head ->
        [none] none
       *[other] { $head }
    }  shaft { $shaft ->
        [none] none
       *[other] { $shaft }
    }  grip { $grip ->
        [none] none
       *[other] { $grip }
    }{ $adapter ->
        [none] {""}
       *[other] {"  "}adapter { $adapter }
    }{ $screw ->
        [none] {""}
       *[other] {"  "}screw { $screw }
    }  tip { $tip_g }{ $off_cpm ->
        [none] {""}
       *[other] {"  "}{ CPM($off_cpm, signed: 1) }
    }  { $chance }
command-match-or = or { $other }
command-match-job = Job { $job }, { $player } (counts { PLAIN($priority, digits: 2) })
command-match-options = To choose from:
command-match-option-swing-weight =
    { $tip_g } in the tips, worst { POINTS($worst_points, digits: 2) } off{ $worst_cpm ->
        [none] {""}
       *[other] , shafts at most { $worst_cpm } off
    }
command-match-option-inertia =
    { $tip_g } in the tips, worst { POINTS($worst_points, digits: 2) } off{ $worst_cpm ->
        [none] {""}
       *[other] , shafts at most { $worst_cpm } off
    }, equal inertia
command-match-proven = Cost { PLAIN($cost, digits: 4) }, proven: no choice of these parts costs less.
command-match-bound = Cost { PLAIN($cost, digits: 4) }, proven at least { PLAIN($bound, digits: 4) }: at most { PERCENT($gap_share, digits: 1) } better is possible.
command-match-together = together: { PLAIN($inside, digits: 1) } clubs in tolerance, { $unbuilt } unbuilt, { MASS($tip_g, digits: 0) } in the tips
command-match-in-turn = in turn: { PLAIN($inside, digits: 1) } clubs in tolerance, { $unbuilt } unbuilt, { MASS($tip_g, digits: 0) } in the tips
command-match-due = Due dates:
command-match-due-job = Job { $job }, due { $due_on }: { $state }
command-match-watch = { PLAIN($seconds) } s: cost { PLAIN($cost, digits: 4) }, proven at least { PLAIN($bound, digits: 4) }. Ctrl-C: enough

# What can be done about a club.
command-advise-club = Club { $slot }: as planned { $chance }.
command-advise-no-plan = Club { $slot } has no plan yet. Accept one with `setwright plan { $job } --accept`.
command-advise-grip = Grip { $code } ({ $grip_g }) for club { $slot }.

# Orders and needs.
command-order-day = “{ $typed }” is not a date. Write it like 2026-03-10
command-order-for = “{ $typed }” is not JOB:COUNT. For example --for 3:2
command-order-here = { $received } of { $count }
command-order-column-order = order
command-order-column-what = what
command-order-column-here = here
command-order-column-masses = masses
command-order-column-job = for job
command-order-column-supplier = of
command-order-column-expected = expected
command-order-column-state = { "" }
command-order-lacks-nothing = Job { $job } lacks nothing.
command-order-wanted =
    { $n } × { $kind } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }{ $masses ->
        [none] {""}
       *[other] , { $masses }
    }; { $ordered } ordered
command-order-weigh-in = Weigh in { $n } of { $model }.
command-need-to-order = to order

# Parts sorted by weight; heads to order by weight.
command-sort-sum = { $n } parts, mean { $mean_g }, scatter { MASS($scatter_g, digits: 2) }
command-sort-not-weighed = Not weighed: { $codes }
command-ask-share = { PERCENT($inside_share, digits: 1) }
command-ask-column-head = head
command-ask-column-swing-weight = swing weight
command-ask-column-masses = heads of
command-ask-column-supply = theirs
command-ask-column-inside = usable
command-ask-column-any-shaft = any shaft
command-ask-column-order = order for one

# What is said when the bench is open.
command-shop-made = A new shop was made at { $place }
command-greeting = Setwright is at http://{ $address }, with { $database }. Ctrl-C stops it.
command-demo-greeting =
    The invented shop Quillmere Bench is loaded: stock weighed, one set at the bench, one to plan.
    Setwright is at http://{ $address }

    Try first: open http://{ $address }/bench/1/1?step=dry, type D9.7 for the 4 iron and press Enter.
    Then Glue, New batch. Ctrl-C stops it; what was entered stays. For other commands on this shop:
    --database { $database }
command-demo-as-left =
    The invented shop is as you left it; `setwright demo --reset` begins it again.
    Setwright is at http://{ $address }, with { $database }. Ctrl-C stops it.
command-open-to-network = Tablets in the network reach this shop and need a key to come in: setwright key tablet NAME shows six digits. What they send and see is not encrypted: use a network of the shop's own, not the one that guests use.
command-encrypted = Tablets in the network reach this shop at { $address }, encrypted, and need a key to come in. setwright reach shows how a tablet is told to trust it.

# Clubs, kinds of job, readings.
command-fault-none-of = “{ $text }” is none of { $known }
command-fault-not-a-document = { $path }: { $log }
command-club-job = Job { $job } with { $n ->
    [one] { $n } club
   *[other] { $n } clubs
} is at the bench.
command-kind-kept = Kept: { $name }.
command-kind-removed = Removed: { $name }.

# The settings of the server, and what helps to find a fault.
config-from-command-line = from the command line
config-from-environment = from the environment
config-from-file = from the configuration file
config-from-usual = as usual
config-how = { $option }, or { $environment } in the environment
support-written = Written to { $path }. It holds no names; look at it before you send it.
