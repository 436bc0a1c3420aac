### Club

