### Find: one field for everything

find-title = “{ $text }”
find-count = { $n } fit
find-nothing = Nothing fits “{ $text }”.
find-nothing-next = Type a customer’s name, “job 1”, the code of a part or a job card, a lot, or “order 2”; or scan a label again.
find-customer = Customer { $name }, { $code }
find-sheet = Sheet of { $player }, not approved
find-club = Club { $slot } of job { $job }
find-owned-club = { $club } of { $player }, { $code }
find-part = { $kind } { $code }
find-parts =
    { $n ->
        [one] 1 part with “{ $text }”
       *[other] { $n } parts with “{ $text }”
    }
find-lot =
    { $n ->
        [one] Lot { $lot }: 1 club has something of it
       *[other] Lot { $lot }: { $n } clubs have something of it
    }
find-order = Order { $order }
find-batch = Batch { $batch } of adhesive
