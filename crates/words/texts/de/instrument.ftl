### Instrument

# Why a recording is refused.
recording-empty = die Aufnahme ist leer
    .next = Noch einmal aufnehmen oder eine andere Datei wählen
recording-not-wav = keine lesbare WAV-Datei ({ $reason })
    .next = Als unkomprimiertes PCM oder float speichern
recording-axes = die Aufnahme hat { $count } Achsen, gelesen werden 1 bis { $limit }
    .next = Die anderen weglassen
recording-too-short = die Aufnahme hat { $count } Abtastwerte, nötig sind mindestens { $limit }
    .next = Länger aufnehmen
recording-too-long = die Aufnahme hat mehr als { $limit } Abtastwerte
    .next = Die Schwingung herausschneiden, höchstens eine Minute
recording-rate = in der Datei steht eine Abtastrate von { FIGURE($value_hz) } Hz
    .next = Noch einmal mit der Rate speichern, mit der aufgenommen wurde
recording-not-a-number = Zeile { $row }, Spalte { $column }: „{ $text }“ ist keine Zahl
    .next = Nur Zahlen schreiben, eine Zeile für jeden Zeitpunkt
recording-ragged = Zeile { $row } hat { $count } Spalten, die erste hat { $expected }
    .next = In jede Zeile die Zeit und eine oder zwei Achsen schreiben
recording-time-unit = über der Zeitspalte steht „{ $heading }“
    .next = Als Überschrift time_s, time_ms oder time_us schreiben
recording-time-backwards = Zeile { $row }: die Zeit { FIGURE($value_s) } s liegt nicht nach { FIGURE($limit_s) } s
    .next = Die Zeilen nach der Zeit ordnen
recording-uneven = Zeile { $row }: die Zeit weicht um { FIGURE($off_s) } s vom gleichmäßigen Abstand ab, erlaubt sind höchstens { FIGURE($limit_s) } s
    .next = Mit fester Rate aufnehmen oder nach fehlenden Zeilen suchen
recording-not-a-table = die Tabelle ist nicht lesbar ({ $reason })
    .next = Als CSV in UTF-8 speichern
