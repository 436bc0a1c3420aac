### Label

