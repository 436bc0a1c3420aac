### What the check of a sheet finds
