### Planner

