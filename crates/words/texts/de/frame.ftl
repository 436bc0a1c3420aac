### Frame: what stands around every page

# Title of the window.
frame-window = { $title } · Setwright
frame-skip = Zum Inhalt springen
frame-home = Setwright, Heute

# The places of the shop, in the order of the day.
frame-places = Bereiche
frame-today = Heute
frame-sheets = Blätter
frame-stock = Lager
frame-plan = Plan
frame-bench = Bank
frame-glue = Kleben
frame-records = Akten

# The foot of every page.
frame-more = Mehr
frame-keys = Tasten
frame-version = Setwright { $version }

# The places of the house, as links
page-today = Heute
page-learned = Gelernt
page-recall = Rückruf
page-capability = Prozessfähigkeit
page-calc = Berechnungen
page-scales = Waagen
page-shop = Werkstatt
page-tablet = Dieses Tablet
page-glossary = Wörterverzeichnis
page-api = API

# The clock of a mixed cup, in the head of every page.
clock-glue = Kleber { $batch }
