### Price: the list, a quote, a bill

price-fault-no-amount =
    { $digits ->
        [0] “{ $text }” is no amount of this currency
       *[other] “{ $text }” is no amount with at most { $digits } digits behind the point
    }
    .next = Write for example 12
price-fault-currency = the currency, its digits or the text under the total is too long
    .next = Write a sign or three letters, 0 to 3 digits, and at most 2000 letters
price-fault-too-many = there are more lines than { $most }
    .next = Put some together
price-fault-model-twice = the model { $model } has two prices
    .next = Keep one of them
price-fault-no-name = a line has no name, or one of more than { $most } letters
    .next = Write what it is for
price-fault-range = a price or a count cannot be
    .next = Write a count from 1 and a price below ten million
price-fault-no-line = line { $n } does not read
    .next = Write it as the hint below the box says, with a ; between
per-club = club
per-job = job

price-title = Prices
price-currency = Currency
price-currency-hint = as it stands behind an amount: EUR
price-decimals = Digits behind the point
price-decimals-hint = 2 where a hundred coins make one
price-tax = Under the total
price-tax-hint = tax, the shop’s numbers and address, as the law of your place asks
price-work = Work
price-work-lines = One line each
price-work-hint = Name; price; club or job; usual — for example: Build; 25.00; club; usual. What is usual is on every new quote.
price-usual = usual
price-parts = Parts
price-parts-hint = For one piece. A model without a price is not on a quote.
price-quote = Quote
price-quote-of = Quote for { $player }
price-quote-lines = Lines
price-quote-hint = Count; what; price of one — for example: 8; Regrip; 6.50. A price below zero takes off.
price-quote-save = Keep the quote
price-quote-anew = Begin again from the price list
price-proposed = From the price list, not kept yet. Change what you like, then keep it.
price-no-prices = No model of this sheet has a price yet. Write lines by hand, or fill the price list first.
price-lines = Lines of the quote
price-total = Total
price-column-what = what
price-column-count = pieces
price-column-each = each
price-column-sum = sum
price-bill = Bill for job { $job }
price-bill-on = Job { $job }, { $drawn_on }
price-bill-no-lines = There is no quote for this job yet: the bill has no lines.
price-built = What was built
price-line = { $count } × { $what }: { $sum }
