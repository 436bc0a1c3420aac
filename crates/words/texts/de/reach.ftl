### Wie Tablets diesen Rechner erreichen und worauf sie vertrauen sollen

reach-fault-file = { $path } ist nicht zu lesen oder zu schreiben: { $log }
    .next = Dem Benutzer der Werkbank dort das Schreiben erlauben oder Platz schaffen
reach-fault-half-a-root = die Hälfte des Stammzertifikats dieses Rechners fehlt: { $path }
    .next = Aus einer Sicherung des Ordners zurücklegen. Ist es verloren, den Ordner entfernen: Die Werkbank legt ein neues an, dem jedes Tablet einmal vertrauen muss
reach-fault-not-readable = { $path } ist nicht, was es sein soll: { $log }
    .next = Eine Datei in PEM-Form angeben: Text zwischen Zeilen mit BEGIN und END
reach-fault-not-covered = das Stammzertifikat dieses Rechners gilt nicht für den Namen { $name }
    .next = Den Namen weglassen oder den Ordner { $folder } entfernen: Die Werkbank legt ein neues für alle ihre Namen an, dem jedes Tablet einmal vertrauen muss
reach-fault-unusable = das Zertifikat ist nicht zu gebrauchen: { $log }
    .next = Prüfen, ob der Schlüssel zum Zertifikat gehört
reach-fault-listen = auf { $place } ist kein Zugang möglich: { $log }
reach-fault-announce = { $name } lässt sich im Netz nicht bekannt machen: { $log }

reach-only-here = Nur dieser Rechner erreicht die Werkbank. Wie sich das ändern lässt, steht in docs/install.md unter “Let the tablets in”.

# Die Seite für ein Tablet, das diesem Rechner noch nicht vertraut.
trust-title = Die Werkbank auf diesem Tablet öffnen
trust-about = Was dieses Tablet sendet und sieht, ist verschlüsselt, sobald es dieser Werkbank vertraut. Das geschieht einmal, in drei Schritten.
trust-first = 1 · Das Zertifikat holen
trust-get = Zertifikat holen
trust-compare = Was das Tablet davon als SHA-256 zeigt, mit den Zeichen auf dem Bildschirm der Werkbank vergleichen, unter „Zugänge“. Sind es andere, nicht weitermachen: Jemand sitzt dazwischen.
trust-figures = SHA-256 des Zertifikats der Werkbank, zum Vergleich mit dem, was das Tablet zeigt:
trust-second = 2 · Ihm vertrauen
trust-android = Android
trust-android-how = Einstellungen, nach „CA-Zertifikat“ suchen, Trotzdem installieren, setwright.crt wählen. Das Tablet fragt nach seiner Bildschirmsperre.
trust-ipad = iPad oder iPhone
trust-ipad-how = Das Laden erlauben. Einstellungen, „Profil geladen“, Installieren. Dann Einstellungen, Allgemein, Info, Zertifikatsvertrauenseinstellungen: das einschalten, das mit „Setwright bench“ beginnt.
trust-windows = Windows
trust-windows-how = setwright.crt öffnen, Zertifikat installieren, Aktueller Benutzer, in „Vertrauenswürdige Stammzertifizierungsstellen“ speichern, Fertig stellen.
trust-mac = Mac
trust-mac-how = setwright.crt öffnen, es kommt in die Schlüsselbundverwaltung. Dort öffnen, Vertrauen, „Immer vertrauen“.
trust-linux = Linux, und Firefox überall
trust-linux-how = Im Browser: Einstellungen, nach „Zertifikate“ suchen, Zertifizierungsstellen, Importieren, setwright.crt wählen, Websites ankreuzen.
trust-third = 3 · Die Werkbank öffnen
trust-open-about = Der Browser sagt dann nichts mehr von einer Gefahr. Tut er es doch, fehlt Schritt 2: nicht an der Warnung vorbeigehen.
trust-open = { $address } öffnen
trust-only-here = Das Zertifikat gilt nur für diese Werkbank: nur für Namen und Adressen eines lokalen Netzes. Niemand kann damit lesen, was das Tablet sonst tut.
