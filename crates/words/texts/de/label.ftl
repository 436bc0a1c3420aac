### Labels of parts

label-title = Etiketten
label-scan-square = das Quadrat scannen
label-of-part = { $code }, { $what }, { $mass }
label-part = { $name } { $number }

# The page of labels.
label-none = Kein Teil passt.
label-none-next = Die Teile auf der Seite Lager wählen, dann ihre Etiketten drucken.
label-next = Die nächsten, ab { $from } von { $total }
label-sheet = Bogen
label-strip = Streifen, eines je Seite
label-back = Zurück zum Lager
label-print-sheet = Diese Seite mit 100 % und ohne eigene Ränder drucken: jedes Etikett misst 62 × 29 mm.
label-print-strip = Diese Seite mit 100 % und ohne eigene Ränder drucken: jedes Etikett misst 62 × 29 mm, eines auf jeder Seite des Streifens.
label-count =
    { $n ->
        [one] { $n } Etikett
       *[other] { $n } Etiketten
    }

# Drucker.
page-language-zpl = ZPL II
page-language-epl = EPL2
page-language-esc-pos = ESC/POS (Bons)
fineness-203 = 203 Punkte je Zoll
fineness-300 = 300 Punkte je Zoll

printer-setting-name = ein Drucker braucht einen Namen mit höchstens { $most } Buchstaben
    .next = Schreiben, wo er steht: Regal
printer-setting-twice = zwei Drucker heißen { $name }
    .next = Jedem einen eigenen Namen geben
printer-setting-place = „{ $text }“ ist kein Ort eines Druckers
    .next = Die Adresse im Netz schreiben, 192.168.1.40 oder printer.local:9100, oder das Gerät, /dev/usb/lp0
printer-setting-side = ein Etikett hat Seiten von { LENGTH($least_mm, digits: 1) } bis { LENGTH($most_mm, digits: 1) }
    .next = Das Etikett messen
printer-setting-gap = eine Lücke von mehr als { LENGTH($most_mm, digits: 1) } oder weniger als null
    .next = Zwischen zwei Etiketten messen; 0 bei einer Rolle ohne Lücken
printer-setting-copies = jedes Etikett wird 1- bis { $most }-mal gedruckt
    .next = Eine ganze Zahl schreiben
printer-setting-none = die Werkstatt hat keinen Drucker
    .next = Unter „Etiketten“, „Drucker“ einen einrichten
printer-setting-unknown = die Werkstatt hat keinen Drucker „{ $name }“; vorhanden: { $known }
    .next = Unter „Etiketten“, „Drucker“ einen einrichten

label-fault-nothing = kein Etikett ist gewählt, also wurde nichts gedruckt
    .next = Teile oder Schläger wählen
label-fault-no-code = ein Etikett ohne Code lässt sich nicht scannen, also wurde nichts gedruckt
    .next = Dem Teil einen Code geben
label-fault-too-small = der Code { $code } passt nicht lesbar auf ein Etikett von { LENGTH($width_mm, digits: 1) } × { LENGTH($height_mm, digits: 1) }; nichts wurde gedruckt
    .next = Ein größeres Etikett oder einen kürzeren Code nehmen
label-fault-too-long = der Code { $code } hat mehr als { $most } Buchstaben
    .next = Dem Teil einen kürzeren Code geben

printer-said-no-paper = kein Etikett ist eingelegt
printer-said-no-ribbon = kein Farbband ist eingelegt
printer-said-open = er ist offen
printer-said-paused = er ist angehalten
printer-said-wrong = er meldet einen Fehler

printer-fault-off = unter { $place } antwortet kein Drucker: { $log }
    .next = Einschalten, Kabel und Adresse prüfen, dann noch einmal drucken
printer-fault-no-host = das Netz kennt { $host } nicht
    .next = Den Namen des Druckers prüfen oder die Adresse in Ziffern schreiben
printer-fault-device = auf { $place } lässt sich nicht schreiben: { $log }
    .next = Das Kabel prüfen und ob der Benutzer dieses Rechners drucken darf
printer-fault-stopped = der Drucker unter { $place } nimmt keine Etiketten mehr an: { $log }
    .next = Am Drucker nachsehen: Einige Etiketten können gedruckt sein. Nur die übrigen noch einmal drucken
printer-fault-cannot-print = der Drucker unter { $place } kann nicht drucken: { $said }. Nichts wurde gesendet
    .next = Am Drucker beheben, dann noch einmal drucken

label-sent =
    { $n ->
        [one] 1 Etikett an { $printer } gesendet.
       *[other] { $n } Etiketten an { $printer } gesendet.
    }
label-sent-silent =
    { $n ->
        [one] 1 Etikett an { $printer } gesendet. Der Drucker meldet seinen Zustand nicht: nachsehen, ob er gedruckt hat.
       *[other] { $n } Etiketten an { $printer } gesendet. Der Drucker meldet seinen Zustand nicht: nachsehen, ob er gedruckt hat.
    }
label-print-on = Drucken auf { $printer }
label-copies = Anzahl je Etikett
label-printers = Drucker
label-printers-none = Kein Drucker ist eingerichtet. Etiketten lassen sich aus dem Browser drucken.
label-printers-about = Ein Drucker im Netz oder an diesem Rechner druckt Etiketten sofort, ohne das Druckfenster des Browsers. Der Inhaber richtet ihn ein.
label-printer-name = Name
label-printer-name-hint = wo er steht
label-printer-to = Adresse oder Gerät
label-printer-to-hint = 192.168.1.40, printer.local:9100 oder /dev/usb/lp0
label-printer-language = Seitensprache
label-printer-language-hint = steht im Handbuch des Druckers oder auf einer Testseite
label-printer-fineness = Druckpunkte
label-printer-width = Breite eines Etiketts
label-printer-height = Höhe eines Etiketts
label-printer-gap = Lücke zwischen Etiketten
label-printer-keep = Drucker speichern
label-printer-remove = Entfernen
label-printer-remove-of = Drucker { $printer } entfernen
label-printer-test = Ein Probeetikett drucken
label-printer-is = { $printer }: { $language }, { LENGTH($width_mm, digits: 1) } × { LENGTH($height_mm, digits: 1) }, unter { $to }
label-test-line = Probeetikett
label-club = { $club }, { $player }
label-of-clubs = Etiketten drucken
