### Weigh in

