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
find-model = { $name }, model of { $kind }, { $code }
find-note = “{ $text }” ({ $by })
find-note-job = “{ $text }”, job { $job } ({ $by })
find-meant = Nothing has “{ $text }”. Did you mean “{ $meant }”?
find-page = Find
find-empty = A name, “job 1”, a code, a lot, an order, a word of a note; a part of it will do.
find-batch = Batch { $batch } of adhesive
