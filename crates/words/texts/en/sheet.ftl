### Sheet

