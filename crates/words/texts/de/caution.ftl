### What a person at a step should have in mind

caution-says-cutting = Schutzbrille auf, Werkstück einspannen, Absaugung an, Partikelmaske tragen. Composite nie ohne das alles trocken sägen oder schleifen: Das Herstellerblatt der Maschine und die örtlichen Vorschriften gehen vor.
caution-says-epoxy = Handschuhe aus Nitril oder Butyl tragen und lüften: Epoxid kann Hautallergien auslösen, und ein voller Becher kann heiß werden, bis er raucht. Sicherheitsdatenblatt des Klebers und örtliche Vorschriften beachten.
caution-says-solvent = Lösemittel brennt, und seine Dämpfe schaden: lüften, Handschuhe tragen, Flammen und Heißluftpistolen fernhalten. Sicherheitsdatenblatt und örtliche Vorschriften beachten.
caution-says-bending = Schutzbrille auf und Kopf einspannen: Zu viel Biegung oder Hitze kann das Hosel reißen lassen. Die Grenze des Herstellers einhalten; im Zweifel eine Fachkraft fragen.
caution-says-swing = Niemand schwingt diesen Schläger, bevor der Kleber nach Angabe des Herstellers voll ausgehärtet ist. Im Zweifel an der Klebestelle eine Fachkraft fragen.
caution-says-turning = Schutzbrille auf, Ärmel und Haare weg vom Band, Absaugung an. Herstellerblatt der Maschine und örtliche Vorschriften beachten.
caution-says-preparing = Schutzbrille, Handschuhe und Partikelmaske tragen; Staub dort absaugen, wo er entsteht. Am Schleifbock höchstens 3 mm Abstand zwischen Auflage und Scheibe, keine Hitze an Composite: Mehr steht in den Herstellerblättern und örtlichen Vorschriften.
caution-says-lead = Blei ist giftig: Handschuhe tragen, vor Essen und Trinken Hände waschen und nie trocken auffegen. Sicherheitsdatenblatt und örtliche Vorschriften beachten.
caution-says-stripping = Mit der Hakenklinge von der Hand weg schneiden, Handschuhe an; auf Composite nicht drücken, eine Kerbe schwächt es. Altes Lösemittel austrocknen lassen, bevor der neue Griff draufkommt, und das Sicherheitsdatenblatt beachten.
caution-says-damage = Niemand schwingt einen Schläger mit losem oder gerissenem Teil: Ein Kopf, der wegfliegt, verletzt. Gegen Splitter Handschuhe und Schutzbrille tragen; im Zweifel eine Fachkraft fragen.
caution-says-pulling = Heißes Hosel und Epoxidrauch: hitzefeste Handschuhe, Schutzbrille, frische Luft; an Composite wenig Hitze, gerade abziehen, nie drehen. Herstellerblätter und örtliche Vorschriften beachten; im Zweifel eine Fachkraft fragen.
