### Frame

# The places of the house, as links
page-today = Today
page-learned = Learned
page-capability = Capability
page-calc = Calculations
page-scales = Scales
page-shop = Shop
page-glossary = Glossary
page-api = API

# A cup of adhesive, by its number, and how long it can still be used
clock-glue = Glue { $batch }
clock-over = over
