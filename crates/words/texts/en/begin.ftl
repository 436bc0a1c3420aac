### The first hour of a new shop

begin-ways = Begin here
begin-ways-about = This shop is still empty. Begin with one set: three questions, the set in one line, the masses of its parts. Whatever you leave out can be added later.
begin-one-set = Begin with one set
begin-my-lists = Bring my lists
begin-try = Try the invented shop
begin-title = Three questions
begin-step-one = Step 1 of 3
begin-step-two = Step 2 of 3
begin-step-three = Step 3 of 3
begin-go-on = Go on
begin-known = What you know of joints, grips and wraps
begin-known-hint = Figures that you work with, in points of swing weight. Leave blank what you do not know: the shop learns it from your clubs.
begin-joint = A glued joint puts on
begin-adhesive = Adhesive
begin-grip-takes = A grip takes off
begin-grip = Grip
begin-wrap-takes = One wrap takes off
begin-tape = Tape
begin-scales = How finely your scales show
begin-balance-step = Swing weight scale
begin-mass-step = Gram scale
begin-step-needed = enter the step of its display
begin-units = Units
begin-units-field = Units on this tablet
begin-units-hint = Each builder may have other units.
begin-set-title = The set in one line
begin-written = The sheet
begin-written-hint = As you write it: “7, D2” for one club, “5-PW, D3, 2 wraps, +1/4” for a set
begin-head = Head
begin-shaft = Shaft
begin-shaft-fits = One that fits the head
begin-models-hint = Models with usual figures are there to begin with. Replace the figures with your maker's when you have them.
begin-own-model = Enter a model of your own
begin-whole-sheet = Write a whole sheet
begin-parts-title = Weigh the parts
begin-parts-hint = What each part weighs. You can weigh some now and the others later.
begin-parts-there = The stock has every head, shaft and grip of this sheet.
begin-piece-number = { $number }: { $name }
begin-mass-needed = enter what it weighs, or go back to the sheet
begin-sure = The mass is right
begin-small =
    { $n ->
        [one] Ferrules and a tray of tip weights are at hand: put one of each into the stock
       *[other] Ferrules and a tray of tip weights are at hand: put { $n } of each into the stock
    }
begin-to-plan = To the plan
begin-see-sheet = See the sheet
begin-import = Load the parts from a list
begin-lists-about = Models, parts and sheets from files
begin-lists-models = Load models
begin-lists-models-how = A file of models that was saved here, or written by a program.
begin-lists-usual = Usual models
begin-lists-usual-how = Models with usual figures, where you have no maker's figures at hand.
begin-lists-parts = Load parts
begin-lists-parts-how = A list or a workbook. You say which column is what; rows that cannot be read are named.
begin-lists-sheets = Load a sheet
begin-lists-sheets-how = A sheet that was saved as a file.
begin-lists-set-how = Without lists: one set in a line.
begin-try-crumb = It has a database of its own
begin-try-about = The invented shop has players, stock, a set at the bench and finished records. Nothing of it gets into your shop. Whoever started Setwright starts it on the same machine with this command:
begin-try-next = It prints the address to open. Stop it when you have seen enough; your own shop stays as it is.

plan-anyway = Build it anyway
plan-anyway-about = The nearest parts are taken. The target stays as the sheet says, and the bench goes on saying how far off the club is and what brings it there.
plan-anyway-why = Why, for the record
plan-weigh-missing = Weigh in the missing parts
