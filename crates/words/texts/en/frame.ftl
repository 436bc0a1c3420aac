### Frame: what stands around every page

# Title of the window.
frame-window = { $title } · Setwright
frame-skip = Skip to the content
frame-home = Setwright, Today

# The places of the shop, in the order of the day.
frame-places = Places
frame-today = Today
frame-sheets = Sheets
frame-stock = Stock
frame-plan = Plan
frame-bench = Bench
frame-glue = Glue
frame-records = Records

# The foot of every page.
frame-more = More
frame-keys = Keys
frame-version = Setwright { $version }

# The places of the house, as links
page-today = Today
page-learned = Learned
page-recall = Recall
page-capability = Capability
page-calc = Calculations
page-scales = Scales
page-shop = Shop
page-tablet = This tablet
page-glossary = Glossary
page-api = API

# The clock of a mixed cup, in the head of every page.
clock-glue = Glue { $batch }
