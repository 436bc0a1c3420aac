### Customer: whose the clubs are

# What is refused of a customer.
customer-fault-no-name = the customer has no name
    .next = Write the name as it is to stand on sheets and records
customer-fault-name-is-code = “{ $name }” is the code of a customer
    .next = Write the name as it is to stand on sheets and records
customer-fault-too-long = { $field } has { $letters } letters, and at most { $most } fit
    .next = Shorten it

# What is refused of what is done with customers.
customer-deed-deleted = customer { $customer } was deleted on { DAY($deleted_at) }
    .next = The jobs stay without a name. Nothing brings the name back
customer-deed-other-name = what was typed, “{ $typed }”, is not the name of customer { $customer }
    .next = Type the name as it stands above, to be sure that it is the right customer
customer-deed-under-way = jobs of the customer are under way: { $jobs }
    .next = Finish or give up the jobs first, then delete

# Where a name may stand that somebody typed.
name-stands-log = the log of the shop
name-stands-readings = reasons beside readings
name-stands-batches = reasons beside batches of adhesive
name-stands-parts = the life, lot or place of a part
name-stands-orders = notes of an order
name-stands-clubs = the name or the life of a club
name-stands-shop = what was said of a scale or a learned value

# The pages.
customer-title = Customers
customer-places = Sheets, customers and prices
customer-new = New customer
customer-search = Name, code, telephone or place
customer-all = All customers
customer-list = Customers by name
customer-none-yet = No customer is kept yet.
customer-none-yet-next = A customer has sheets, jobs and records under one name. Keep one, or make one of a name below.
customer-none-found = No customer fits.
customer-none-found-next = Type part of the name, the code or the telephone number.
customer-count =
    { $n ->
        [0] none
        [one] 1 customer
       *[other] { $n } customers
    }
customer-first-shown = The first { $n } are shown. Search for the others.
customer-clubs = Clubs
customer-goes-clubs =
    { $n ->
        [one] On 1 club, { $clubs }, stands { $code } in place of the name.
       *[other] On { $n } clubs, { $clubs }, stands { $code } in place of the name.
    }
customer-column-name = name
customer-column-code = code
customer-column-hand = hand
customer-column-sheets = sheets
customer-column-jobs = jobs
customer-column-job = job
customer-column-state = state

# Names on sheets that belong to nobody.
customer-names = Names on sheets
customer-names-hint = These sheets belong to no customer: they were written with a name only. Two people may have one name, so nothing is taken for granted.
customer-names-sheets =
    { $n ->
        [one] 1 sheet
       *[other] { $n } sheets
    }
customer-names-make = Make a customer
customer-names-give = Give to { $code }

# One customer.
customer-change = Change
customer-change-title = Change the customer
customer-only-name = Only the name is known.
customer-jobs = Jobs
customer-no-job = No job yet.
customer-sheets = Sheets without a job
customer-held = What is held
customer-held-hint = Whoever asks what the shop holds about them gets one file with all of it. Whoever asks to be forgotten is deleted.
customer-export = Save all that is held
customer-delete = Delete the customer …

# The form.
customer-form-name = Name
customer-form-hand = Plays
customer-form-not-asked = not asked
customer-form-phone = Telephone
customer-form-email = E-mail
customer-form-address = Address
customer-form-glove = Glove
customer-form-glove-hint = as it stands on the glove: ML, 24
customer-form-grip = Grip size
customer-form-grip-hint = diameter 2 in below the cap
customer-form-wraps = Tape
customer-form-wraps-full = Full wraps
customer-form-wraps-hint = beside the base; a new sheet begins with them
customer-form-wraps-lower = Wraps under the lower hand
customer-form-wraps-too-many = A grip takes 20 layers at most. Write how many there are.
customer-form-note = Note
customer-form-contacts-hint = Keep what you need to reach them, no more.
customer-save = Save
customer-save-another = Save as another person
customer-same-name = { $codes } has this name already. Open that one, or save this one as another person.

# Deleting on request.
customer-delete-title = Delete a customer
customer-delete-who = { $name } ({ $code }) is to be deleted. Nothing brings the name back.
customer-delete-type = Type “{ $name }” to be sure that it is the right customer
customer-delete-now = Delete for good
customer-delete-not-yet = Not yet
customer-delete-under-way =
    { $n ->
        [one] Job { $jobs } is under way. Finish it or give it up first.
       *[other] Jobs { $jobs } are under way. Finish them or give them up first.
    }
customer-goes = What goes
customer-goes-row = Name, contacts, hand, glove, grip size and note.
customer-goes-sheets =
    { $n ->
        [one] 1 sheet of which no job was made, whole.
       *[other] { $n } sheets of which no job was made, whole.
    }
customer-goes-jobs =
    { $n ->
        [one] The name and the note of job { $jobs }, its sheet and its record: { $code } stands there in their place.
       *[other] The name and the notes of jobs { $jobs }, their sheets and records: { $code } stands there in their place.
    }
customer-stays = What stays
customer-stays-number = The number { $code }, which nobody else gets.
customer-stays-work = What was built: parts, lots, masses, readings, dates and who worked on it. The shop has learned from it, and a bad lot is found by it.
customer-stays-other-sheets =
    { $n ->
        [one] 1 sheet with this name that belongs to no customer. If it is the same person, give it to the customer first, under Customers.
       *[other] { $n } sheets with this name that belong to no customer. If it is the same person, give them to the customer first, under Customers.
    }
customer-stays-typed =
    { $n ->
        [one] 1 entry that somebody typed the name into: { $place }. Such entries are never changed.
       *[other] { $n } entries that somebody typed the name into: { $place }. Such entries are never changed.
    }
customer-stays-backups = Backups made before: those in { $folder } still hold the name for up to { $months } months, until they are thinned out; copies made by hand and the file kept at an update, for as long as you keep them. If you put one back, delete the customer again.
customer-stays-copies = Copies of the shop made before, for as long as you keep them. If you put one back, delete the customer again.
customer-deleted-title = Deleted
customer-deleted-tag = Done
customer-deleted = { $code } stands where the name stood.

# On the command line.
customer-line = { $code }  { $name }: { $sheets ->
        [one] 1 sheet
       *[other] { $sheets } sheets
    }, { $jobs ->
        [one] 1 job
       *[other] { $jobs } jobs
    }
customer-line-names = Names on sheets that belong to no customer:
customer-line-sheet = Sheet of { $player }, { $code }
customer-line-say-name = Nothing was deleted. Say --name and the name to delete for good.

# Parts that are a customer's own.
customer-deed-parts-here = parts of the customer are still here: { $codes }
    .next = Hand them back and put them aside with that reason, or say under Stock that they are the shop’s
customer-deed-holds-their-parts = job { $job } has parts of another customer: { $codes }
    .next = Take them out of the plan first, or say under Stock that they are the shop’s
customer-parts-here =
    { $n ->
        [one] Part { $codes } is theirs and still here. Hand it back or take it over first.
       *[other] Parts { $codes } are theirs and still here. Hand them back or take them over first.
    }
customer-parts = Their parts
customer-part-of = of { $code }
customer-line-part = { $code } is the { $whose ->
        [shop] shop’s
       *[other] part of { $whose }
    }
