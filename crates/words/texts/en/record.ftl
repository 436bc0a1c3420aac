### Record

