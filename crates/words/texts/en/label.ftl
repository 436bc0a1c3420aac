### Labels of parts

label-title = Labels
label-scan-square = scan the square code
label-of-part = { $code }, { $what }, { $mass }
label-part = { $name } { $number }

# The page of labels.
label-none = No parts match.
label-none-next = Choose the parts on the stock page, then print their labels.
label-next = The next, from { $from } of { $total }
label-sheet = Sheet
label-strip = Strip, one a page
label-back = Back to the stock
label-print-sheet = Print this page at 100 %, without margins of its own: each label is 62 × 29 mm.
label-print-strip = Print this page at 100 %, without margins of its own: each label is 62 × 29 mm, one on each page of the strip.
label-count =
    { $n ->
        [one] { $n } label
       *[other] { $n } labels
    }

# Printers.
page-language-zpl = ZPL II
page-language-epl = EPL2
page-language-esc-pos = ESC/POS (receipts)
fineness-203 = 203 dots an inch
fineness-300 = 300 dots an inch

printer-setting-name = a printer needs a name of at most { $most } letters
    .next = Write where it stands: shelf
printer-setting-twice = two printers are called { $name }
    .next = Give each its own name
printer-setting-place = “{ $text }” is not the place of a printer
    .next = Write its address in the network, 192.168.1.40 or printer.local:9100, or its device, /dev/usb/lp0
printer-setting-side = a label has sides of { LENGTH($least_mm, digits: 1) } to { LENGTH($most_mm, digits: 1) }
    .next = Measure the label
printer-setting-gap = a gap of more than { LENGTH($most_mm, digits: 1) }, or less than none
    .next = Measure between two labels; 0 for a roll without gaps
printer-setting-copies = each label is printed 1 to { $most } times
    .next = Write a whole number
printer-setting-none = the shop has no printer
    .next = Set one up under Labels, Printers
printer-setting-unknown = the shop has no printer “{ $name }”; it has: { $known }
    .next = Set one up under Labels, Printers

label-fault-nothing = no label was chosen, so nothing was printed
    .next = Choose parts or clubs
label-fault-no-code = a label without a code cannot be scanned, so nothing was printed
    .next = Give the part a code
label-fault-too-small = the code { $code } does not fit a label of { LENGTH($width_mm, digits: 1) } × { LENGTH($height_mm, digits: 1) } so that a scanner could read it; nothing was printed
    .next = Use a larger label, or a shorter code
label-fault-too-long = the code { $code } has more than { $most } letters
    .next = Give the part a shorter code

printer-said-no-paper = no label is in it
printer-said-no-ribbon = no ribbon is in it
printer-said-open = it is open
printer-said-paused = it is paused
printer-said-wrong = it reports an error

printer-fault-off = no printer answers at { $place }: { $log }
    .next = Switch it on, look at its cable and its address, then print again
printer-fault-no-host = the network knows no { $host }
    .next = Look at the printer’s name, or write its address in figures
printer-fault-device = { $place } cannot be written to: { $log }
    .next = Look at the cable, and whether this machine’s user may print
printer-fault-stopped = the printer at { $place } stopped taking labels: { $log }
    .next = Look at the printer: some labels may be printed. Print only the others again
printer-fault-cannot-print = the printer at { $place } cannot print: { $said }. Nothing was sent
    .next = See to it at the printer, then print again

label-sent =
    { $n ->
        [one] 1 label sent to { $printer }.
       *[other] { $n } labels sent to { $printer }.
    }
label-sent-silent =
    { $n ->
        [one] 1 label sent to { $printer }. The printer does not tell its state: look whether it printed.
       *[other] { $n } labels sent to { $printer }. The printer does not tell its state: look whether it printed.
    }
label-print-on = Print on { $printer }
label-copies = Copies
label-printers = Printers
label-printers-none = No printer is set up. Labels can be printed from the browser.
label-printers-about = A printer in the network or at this machine prints labels at once, without the browser’s print window. An owner sets it up.
label-printer-name = Name
label-printer-name-hint = where it stands
label-printer-to = Address or device
label-printer-to-hint = 192.168.1.40, printer.local:9100 or /dev/usb/lp0
label-printer-language = Page language
label-printer-language-hint = the printer’s manual or a test page says it
label-printer-fineness = Dots
label-printer-width = Width of a label
label-printer-height = Height of a label
label-printer-gap = Gap between labels
label-printer-keep = Keep the printer
label-printer-remove = Remove
label-printer-remove-of = Remove the printer { $printer }
label-printer-test = Print a test label
label-printer-is = { $printer }: { $language }, { LENGTH($width_mm, digits: 1) } × { LENGTH($height_mm, digits: 1) }, at { $to }
label-test-line = test label
label-club = { $club }, { $player }
label-of-clubs = Print labels
