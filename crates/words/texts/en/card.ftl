### Card

