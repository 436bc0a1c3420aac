### Offer

