### Keys: who may come in from outside this machine

key-role-owner = owner
key-role-builder = builder
key-role-reader = reader
key-role-calendar = calendar
key-holder-tablet = tablet
key-holder-program = program
deed-look = looking
deed-work = work
deed-own = what only the owner does
deed-calendar = fetching the calendar

key-end-withdrawn = taken away { $done_at } by { $by }
key-end-over = ended { $end_at }
key-end-until = until { $end_at }
key-held-tablet = { $role }
key-held-program = program, { $role }

access-fault-no-key = this needs a key
    .next = Let this device in by six digits: they are shown under “Access keys” on a device that is in already
access-fault-bad-key = the key is not known here, was taken away or has ended
    .next = Ask for a new one
access-fault-not-allowed = this device’s key is a { $role }’s, which does not go so far
    .next = Do it on a device of the owner, or ask the owner for another key
access-fault-wrong-code = those digits are not shown, or their time is over
    .next = Look at the six digits again, or let new ones be shown
access-fault-too-many-wrong = there were too many wrong digits
    .next = Wait { $wait_min } minutes, then let new digits be shown
access-fault-name = a key needs a name of at most { $most } letters
    .next = Write where the tablet stands or what the program does
access-fault-days = a program’s key is given for 1 to { $most } days
    .next = Write a whole number of days
access-fault-calendar-tablet = a tablet cannot work with a key for the calendar alone
    .next = Choose owner, builder or reader
access-fault-no-such-key = there is no key { $number } that could be taken away
    .next = Look at the list under “Access keys”

page-keys = Access keys
keys-title = Access keys
keys-about = Every tablet, phone or computer needs a key to come in, and so does every program. Only this machine itself needs none.
keys-address = Address for tablets in your network: { $address }
keys-only-here = Nothing but this machine can reach the shop at the moment. “Let the tablets in” in docs/install.md says how to change that.
keys-tablet = Let a tablet in
keys-name = Name of the tablet
keys-name-hint = the bench that it stands at, or whose phone it is
keys-role = May do
keys-role-hint = An owner everything; a builder all the work, but no keys, settings or prices; a reader only looks.
keys-show-code = Show six digits
keys-in = Who is let in
keys-none = No key has been given yet.
keys-program = Give a program a key
keys-program-about = For another program that works with the shop over the API. The key is shown once.
keys-program-name = Name of the program
keys-days = Good for, days
keys-give = Give the key
keys-ended = { $n ->
    [one] 1 key that ended or was taken away
   *[other] { $n } keys that ended or were taken away
}
keys-column-name = name
keys-column-role = may do
keys-column-used = last used, from
keys-column-until = good
keys-column-withdraw = take away
keys-this-one = (this device)
keys-given = since { $given_at }, by { $by }
keys-used = { $used_at }
keys-never-used = never
keys-withdraw = Take away
keys-withdraw-of = Take away the key of { $name }
keys-code-for = For { $name }, as a { $role }
keys-code-type = On the new tablet open { $address } and type these digits.
keys-code-picture = Code with the address and the digits
keys-code-scan = Or point the tablet’s camera at the code.
keys-code-until = The digits work once, until { $time }.
keys-code-done = Back to the access keys
keys-secret-for = Key for { $name }, as a { $role }
keys-secret-once = Copy it now: it is not kept and cannot be shown again. The program sends it with each request, as “Authorization: Bearer” and this text.
door-title = Come in
door-about = This device is not let in yet. On one that is, open “Access keys” at the foot of the page, choose “Show six digits”, and type them here.
door-scanned = The six digits were read from the code.
door-digits = Six digits
door-come-in = Come in
door-lost = No device is let in yet? On the machine that Setwright runs on, open the shop in a browser, or run “setwright key tablet”.
key-line = { $number }  { $name } ({ $held }), { $until }
key-line-code = Type these digits on “{ $name }” by { $time }: { $code }
key-line-secret = Key for { $name }, shown this once: { $secret }
