### The calendar: due dates, ends of cures, expected parts; and lists of the shop as files

calendar-job-due =
    { $n ->
        [one] job { $job } due: { $player }, 1 club
       *[other] job { $job } due: { $player }, { $n } clubs
    }
calendar-handling = batch { $batch } can be handled (job { $jobs })
calendar-full-cure = batch { $batch } fully cured (job { $jobs })
calendar-parts-expected = order { $order } expected: { $n } × { $model }
calendar-parts-expected-from = order { $order } expected: { $n } × { $model } from { $supplier }

export-fault-backwards = the last day is before the first
    .next = Swap them
export-fault-too-many = { $n } readings are too many for one file, { $most } at most
    .next = Choose fewer days

# The page of the calendar.
calendar-title = Calendar
calendar-count =
    { $n ->
        [one] 1 entry
       *[other] { $n } entries
    }
calendar-when = when
calendar-what = what
calendar-day = { $weekday }, { $day }
calendar-time = { $weekday }, { $day }, { $time }
calendar-empty = Nothing is due.
calendar-empty-next = Jobs, cures and expected parts appear here by their day.
calendar-save = Save as a calendar file
calendar-subscribe = On your phone
calendar-subscribe-about = The calendar of a phone or computer can fetch these days by itself, through an address of its own. The address opens nothing but the calendar. It shows players’ names to whoever has it.
calendar-owner-only = An owner’s device can make such an address.
calendar-whose = Whose calendar
calendar-whose-hint = the name in the list under “Access keys”, where the address can be taken away
calendar-give = Make an address
calendar-address-for = Address for { $name }. In the calendar choose “subscribe” or “add by address”, and enter:
calendar-address-picture = Code with the address
calendar-address-once = Copy it now or scan it: it is not kept and cannot be shown again. To end it, take the key away under “Access keys”.

# The page of all lists.
export-title = Lists as files
export-about = For a spreadsheet or another program: CSV with headings, a decimal point, and times in UTC. Names that look like a formula get an apostrophe.
export-save = Save
export-clubs = Clubs, with what they are made of and what was read
export-jobs = Jobs, those that are over too
export-records = Finished clubs: asked, built, verdict
export-orders = Orders
export-needs = What is needed and short
export-parts = Parts
export-parts-book = Parts as a workbook (XLSX)
export-models = Models (JSON)
export-calendar = Calendar (iCalendar)
export-readings = Readings
export-readings-about = Every reading at the bench, with its forecast; at most 250,000 in one file. Leave the days empty for all.
export-from = From
export-to = To
export-one-customer = One customer’s clubs, and everything held about them, are on the customer’s page. The record of one job is on its own page.
customer-clubs-export = Save the clubs as CSV
