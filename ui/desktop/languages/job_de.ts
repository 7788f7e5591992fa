<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>stillshaft</name>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>{0} is not there</source>
        <translation>{0} ist nicht da</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>there is no such folder</source>
        <translation>den Ordner gibt es nicht</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>{0}: holds no job ({1})</source>
        <translation>{0}: enthält keinen Auftrag ({1})</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>{0}: is no ordinary file (a link, folder or device); a job keeps its own record</source>
        <translation>{0}: ist keine gewöhnliche Datei (Verknüpfung, Ordner oder Gerät); ein Auftrag führt sein eigenes Protokoll</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>{0}: cannot be opened: {1}</source>
        <translation>{0}: lässt sich nicht öffnen: {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>{0}: is the same file as one elsewhere (a hard link), and writing would alter both</source>
        <translation>{0}: ist dieselbe Datei wie eine anderswo (harte Verknüpfung), und Schreiben würde beide ändern</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>no folder can be made there; choose another place</source>
        <translation>dort lässt sich kein Ordner anlegen; anderen Ort wählen</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>the disk is full</source>
        <translation>der Datenträger ist voll</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>cannot be written: read-only disk, or no right to</source>
        <translation>nicht schreibbar: schreibgeschützter Datenträger, oder kein Recht dazu</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>is gone: was the disk or stick removed?</source>
        <translation>ist weg: wurde der Datenträger oder Stick entfernt?</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>{0}: {1} lies beside the record and looks like another copy of it; compare the two before going on, then move it away</source>
        <translation>{0}: {1} liegt neben dem Protokoll und sieht wie eine Kopie davon aus; vor dem Weitermachen beide vergleichen, dann die Kopie wegräumen</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>{0}: {1} must be a path in {2}, such as {3}/0001.au</source>
        <translation>{0}: {1} muss ein Pfad in {2} sein, etwa {3}/0001.au</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>{0}: {1} is too long, at most 255 bytes in a name</source>
        <translation>{0}: {1} ist zu lang, höchstens 255 Byte im Namen</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>{0}: {1} is no plain path within the job's folder</source>
        <translation>{0}: {1} ist kein einfacher Pfad im Ordner des Auftrags</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>{0} is no folder of a job; there is {1}</source>
        <translation>{0} ist kein Ordner eines Auftrags; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>{0}: leads out of the job's folder through a link; put a folder there</source>
        <translation>{0}: führt durch eine Verknüpfung aus dem Ordner des Auftrags; dort einen Ordner anlegen</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>{0}: {1} is missing in {2}</source>
        <translation>{0}: {1} fehlt in {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>{0}: {1} leads out through a link; put the file itself there</source>
        <translation>{0}: {1} führt durch eine Verknüpfung hinaus; die Datei selbst dorthin legen</translation>
    </message>
    <message>
        <location filename="../../../solver/folder.py"/>
        <source>{0}: {1} is no ordinary file</source>
        <translation>{0}: {1} ist keine gewöhnliche Datei</translation>
    </message>
    <message>
        <location filename="../../../solver/job.py"/>
        <source>{0}entry {1}: {2}</source>
        <translation>{0}Eintrag {1}: {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/job.py"/>
        <source>line {0}: its id {1} was used before it</source>
        <translation>Zeile {0}: ihre Nummer {1} kam schon vor</translation>
    </message>
    <message>
        <location filename="../../../solver/job.py"/>
        <source>{0}; it is kept and left out</source>
        <translation>{0}; er bleibt erhalten und wird nicht genutzt</translation>
    </message>
    <message>
        <location filename="../../../solver/job.py"/>
        <source>{0} is no kind of event; there is {1}</source>
        <translation>{0} ist keine Art von Eintrag; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/job.py"/>
        <source>{0}: {1}: the record says that itself</source>
        <translation>{0}: {1}: das sagt das Protokoll selbst</translation>
    </message>
    <message>
        <location filename="../../../solver/job.py"/>
        <source>entry {0} is withdrawn already</source>
        <translation>Eintrag {0} ist schon zurückgezogen</translation>
    </message>
    <message>
        <location filename="../../../solver/job.py"/>
        <source>done again</source>
        <translation>wiederhergestellt</translation>
    </message>
    <message>
        <location filename="../../../solver/lock.py"/>
        <source>process {0} on {1}, since {2}</source>
        <translation>Prozess {0} auf {1}, seit {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/lock.py"/>
        <source>{0}: is open in another program ({1}); close it there, or open it to read only</source>
        <translation>{0}: ist in einem anderen Programm offen ({1}); dort schließen oder nur zum Lesen öffnen</translation>
    </message>
    <message>
        <location filename="../../../solver/lock.py"/>
        <source>{0}: is or was open on another computer or in another program ({1}); close it there, or where that is gone for good take the lock over; open it to read only until then</source>
        <translation>{0}: ist oder war auf einem anderen Rechner oder in einem anderen Programm offen ({1}); dort schließen, oder die Sperre übernehmen, wenn es das nicht mehr gibt; bis dahin nur zum Lesen öffnen</translation>
    </message>
    <message>
        <location filename="../../../solver/lock.py"/>
        <source>an unknown computer</source>
        <translation>einem unbekannten Rechner</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>a text holds half a letter (a lone surrogate); write it anew</source>
        <translation>ein Text enthält ein halbes Zeichen (einzelnes Surrogat); neu schreiben</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>cannot be recorded: {0}</source>
        <translation>lässt sich nicht protokollieren: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>cannot be recorded: {0} bytes, at most {1} in one entry</source>
        <translation>lässt sich nicht protokollieren: {0} Byte, höchstens {1} in einem Eintrag</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0} is no text, number, list or table</source>
        <translation>{0} ist weder Text noch Zahl, Liste oder Tabelle</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0} is longer than {1} bytes and is left out</source>
        <translation>{0} ist länger als {1} Byte und wird weggelassen</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>it is no table</source>
        <translation>es ist keine Tabelle</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0} cannot be used and is left out: {1}</source>
        <translation>{0} ist nicht brauchbar und wird weggelassen: {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0} is damaged and is left out: it begins {1}</source>
        <translation>{0} ist beschädigt und wird weggelassen: Anfang {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>has no checksum: written by hand?</source>
        <translation>hat keine Prüfsumme: von Hand geschrieben?</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>is not as it was written (its checksum differs)</source>
        <translation>ist nicht so, wie sie geschrieben wurde (die Prüfsumme weicht ab)</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0} {1}; it is read as it stands, look at it</source>
        <translation>{0} {1}; sie wird gelesen, wie sie steht; ansehen</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>tables within tables, more than {0} deep</source>
        <translation>Tabellen in Tabellen, mehr als {0} tief</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>the number {0} is too large, at most {1}</source>
        <translation>die Zahl {0} ist zu groß, höchstens {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0}: opened to read only</source>
        <translation>{0}: nur zum Lesen geöffnet</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0}: holds a job already, or is no folder; choose a new folder</source>
        <translation>{0}: enthält schon einen Auftrag oder ist kein Ordner; einen neuen Ordner wählen</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0}: has {1} bytes, at most {2}; is it a job's record?</source>
        <translation>{0}: hat {1} Byte, höchstens {2}; ist es das Protokoll eines Auftrags?</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0}: has {1} lines, at most {2}; is it a job's record?</source>
        <translation>{0}: hat {1} Zeilen, höchstens {2}; ist es das Protokoll eines Auftrags?</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0}: line {1} is cut off after {2} bytes and is left out; what came after it was never recorded</source>
        <translation>{0}: Zeile {1} ist nach {2} Byte abgeschnitten und wird weggelassen; was danach kam, wurde nie protokolliert</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0}: line {1} is of format {2}, but this program reads up to {3}; open it with a newer version</source>
        <translation>{0}: Zeile {1} hat Format {2}, dieses Programm liest bis {3}; mit einer neueren Version öffnen</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>its only line cannot</source>
        <translation>seine einzige Zeile ist nicht lesbar</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>none of its {0} lines can</source>
        <translation>keine seiner {0} Zeilen ist lesbar</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0}: is no job's record: {1} be read</source>
        <translation>{0}: ist kein Protokoll eines Auftrags: {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0}: is closed; open it to write</source>
        <translation>{0}: ist geschlossen; zum Schreiben öffnen</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0}; open it to write</source>
        <translation>{0}; zum Schreiben öffnen</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0}: is opened to read only</source>
        <translation>{0}: ist nur zum Lesen geöffnet</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0}: has {1} lines, which is the most; close it and begin a new job</source>
        <translation>{0}: hat {1} Zeilen, mehr gehen nicht; abschließen und einen neuen Auftrag beginnen</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0}: {1}; nothing was added, what is recorded is kept: see to the disk and do it again</source>
        <translation>{0}: {1}; nichts wurde hinzugefügt, das Protokollierte bleibt: nach dem Datenträger sehen und wiederholen</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>nothing was added; close the job and open it again</source>
        <translation>nichts wurde hinzugefügt; den Auftrag schließen und neu öffnen</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0}: was replaced by another program; {1}</source>
        <translation>{0}: wurde von einem anderen Programm ersetzt; {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0}: was changed by another program (it has {1} bytes, but had {2}); {3}</source>
        <translation>{0}: wurde von einem anderen Programm geändert ({1} Byte statt {2}); {3}</translation>
    </message>
    <message>
        <location filename="../../../solver/record.py"/>
        <source>{0}: was changed by another program; {1}</source>
        <translation>{0}: wurde von einem anderen Programm geändert; {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>run {0}: is not there, or was withdrawn</source>
        <translation>Lauf {0}: gibt es nicht, oder er wurde zurückgezogen</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>it was left out</source>
        <translation>er wurde weggelassen</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>run "{0}": does not count ({1}); record why it is used anyway, or leave it out</source>
        <translation>Lauf „{0}“: zählt nicht ({1}); protokollieren, warum er trotzdem genutzt wird, oder weglassen</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>runs "{0}" and "{1}": between them mark or sensors changed by an unknown turn; repeat a run in a mass state already measured, and record the turn it shows</source>
        <translation>Läufe „{0}“ und „{1}“: dazwischen wurden Marke oder Sensoren um einen unbekannten Winkel verdreht; einen Lauf in einem schon gemessenen Massenzustand wiederholen und die Verdrehung protokollieren, die er zeigt</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>run: there is none that counts; take an initial run and a trial run for each plane</source>
        <translation>Lauf: keiner zählt; einen Urlauf und je Ebene einen Testlauf machen</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>limit "{0}".unit</source>
        <translation>Einheit des Grenzwerts „{0}“</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>run "{0}".unit</source>
        <translation>Einheit des Laufs „{0}“</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>run "{0}": is in {1}, but others are in {2}; measure its recording again in one unit</source>
        <translation>Lauf „{0}“: ist in {1}, andere in {2}; seine Aufnahme in einer Einheit neu auswerten</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>run "{0}": has no point "{1}"; solve without that point</source>
        <translation>Lauf „{0}“: hat keinen Messpunkt „{1}“; ohne diesen Punkt rechnen</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>cannot be solved again: {0}</source>
        <translation>lässt sich nicht nachrechnen: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>{0}{1}: is only in the record</source>
        <translation>{0}{1}: steht nur im Protokoll</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>{0}{1}: is only in the new solution</source>
        <translation>{0}{1}: steht nur in der neuen Lösung</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>the record</source>
        <translation>das Protokoll</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>the new solution</source>
        <translation>die neue Lösung</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>{0} at {1}°</source>
        <translation>{0} bei {1}°</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>{0}{1}: was {2}, is {3}</source>
        <translation>{0}{1}: war {2}, ist {3}</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>{0}had {1} entries, has {2}</source>
        <translation>{0}hatte {1} Einträge, hat {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>{0}was {1}, is {2}</source>
        <translation>{0}war {1}, ist {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>entry {0} ({1})</source>
        <translation>Eintrag {0} ({1})</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>{0}: {1} is not as it was when it was recorded (its SHA-256 differs)</source>
        <translation>{0}: {1} ist nicht mehr wie beim Protokollieren (SHA-256 weicht ab)</translation>
    </message>
    <message>
        <location filename="../../../solver/replay.py"/>
        <source>run "{0}".covariance: lacks {1}</source>
        <translation>Lauf „{0}“, Kovarianz: es fehlt {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/analysis.py"/>
        <source>{0}: samples were lost at {1} s: a sweep needs an unbroken record; record it again</source>
        <translation>{0}: bei {1} s gingen Abtastwerte verloren: ein Durchlauf braucht eine lückenlose Aufnahme; neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/analysis.py"/>
        <source>finding the speed</source>
        <translation>Drehzahl wird gesucht</translation>
    </message>
    <message>
        <location filename="../../../ui/analysis.py"/>
        <source>tracking the orders</source>
        <translation>Ordnungen werden verfolgt</translation>
    </message>
    <message>
        <location filename="../../../ui/analysis.py"/>
        <source>measuring the orders</source>
        <translation>Ordnungen werden gemessen</translation>
    </message>
    <message>
        <location filename="../../../ui/analysis.py"/>
        <source>averaging spectra</source>
        <translation>Spektren werden gemittelt</translation>
    </message>
    <message>
        <location filename="../../../ui/analysis.py"/>
        <source>{0} s are too short for lines of {1} Hz: record {2} s or more, or ask for wider lines</source>
        <translation>{0} s sind zu kurz für Linien von {1} Hz: {2} s oder mehr aufnehmen oder breitere Linien wählen</translation>
    </message>
    <message>
        <location filename="../../../ui/analysis.py"/>
        <source>highest {0} Hz: give more than 0 and no more than {1}, 0.4 of the rate</source>
        <translation>höchstens {0} Hz: mehr als 0 und höchstens {1} angeben, das 0.4-Fache der Rate</translation>
    </message>
    <message>
        <location filename="../../../ui/analysis.py"/>
        <source>lines of {0} Hz: a record of {1} s gives {2} Hz or wider ones, and wider than the running speed, {3} Hz, they tell nothing</source>
        <translation>Linien von {0} Hz: eine Aufnahme von {1} s ergibt {2} Hz oder breitere, und breiter als die Drehzahl, {3} Hz, sagen sie nichts</translation>
    </message>
    <message>
        <location filename="../../../ui/analysis.py"/>
        <source>highest {0} Hz: give the running speed, {1} Hz, or more, and no more than {2}, 0.4 of the rate</source>
        <translation>höchstens {0} Hz: die Drehzahl, {1} Hz, oder mehr angeben, und höchstens {2}, das 0.4-Fache der Rate</translation>
    </message>
    <message>
        <location filename="../../../ui/brief_text.py"/>
        <source>"{0}": write key = value, such as "rotor.mass = 80 kg"</source>
        <translation>„{0}“: Schlüssel = Wert schreiben, etwa „rotor.mass = 80 kg“</translation>
    </message>
    <message>
        <location filename="../../../ui/brief_text.py"/>
        <source>"{0}": is no entry of the brief; there is {1}</source>
        <translation>„{0}“: gehört nicht zur Aufgabe; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/brief_text.py"/>
        <source>"{0}": is no entry of the brief; {1} has {2}</source>
        <translation>„{0}“: gehört nicht zur Aufgabe; {1} hat {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/brief_text.py"/>
        <source>{0}: "{1}": answer yes or no</source>
        <translation>{0}: „{1}“: mit yes oder no antworten</translation>
    </message>
    <message>
        <location filename="../../../ui/brief_text.py"/>
        <source>{0}: "{1}" is no whole number</source>
        <translation>{0}: „{1}“ ist keine ganze Zahl</translation>
    </message>
    <message>
        <location filename="../../../ui/brief_text.py"/>
        <source>{0}: "{1}" is no number</source>
        <translation>{0}: „{1}“ ist keine Zahl</translation>
    </message>
    <message>
        <location filename="../../../ui/brief_text.py"/>
        <source>whole number</source>
        <translation>ganze Zahl</translation>
    </message>
    <message>
        <location filename="../../../ui/brief_text.py"/>
        <source>"planes.{0}": a plane has {1}</source>
        <translation>„planes.{0}“: eine Ebene hat {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/brief_text.py"/>
        <source>neighbours.{0}, within</source>
        <translation>neighbours.{0}, Toleranz</translation>
    </message>
    <message>
        <location filename="../../../ui/brief_text.py"/>
        <source>{0}.{1}: "{2}": write amplitude and unit, such as "18 mm/s rms"</source>
        <translation>{0}.{1}: „{2}“: Amplitude und Einheit schreiben, etwa „18 mm/s rms“</translation>
    </message>
    <message>
        <location filename="../../../ui/brief_text.py"/>
        <source>stock: "{0}": write mass x count, such as "5 g x 10, 10 g x 4"</source>
        <translation>Vorrat: „{0}“: Masse x Anzahl schreiben, etwa „5 g x 10, 10 g x 4“</translation>
    </message>
    <message>
        <location filename="../../../ui/brief_text.py"/>
        <source>the same</source>
        <translation>gleicher Wortlaut</translation>
    </message>
    <message>
        <location filename="../../../ui/brief_text.py"/>
        <source> within {0} rpm</source>
        <translation> auf {0} rpm</translation>
    </message>
    <message>
        <location filename="../../../ui/drawing.py"/>
        <source>{0}: plots are written as {1}; end the name so</source>
        <translation>{0}: Bilder werden als {1} geschrieben; den Namen so enden lassen</translation>
    </message>
    <message>
        <location filename="../../../ui/drawing.py"/>
        <source>{0}: cannot be written: {1}; choose another place</source>
        <translation>{0}: nicht schreibbar: {1}; anderen Ort wählen</translation>
    </message>
    <message>
        <location filename="../../../ui/drawing.py"/>
        <source>Amplitude</source>
        <translation>Amplitude</translation>
    </message>
    <message>
        <location filename="../../../ui/drawing.py"/>
        <source>Phase</source>
        <translation>Phase</translation>
    </message>
    <message>
        <location filename="../../../ui/drawing.py"/>
        <source>lag, degrees</source>
        <translation>Nacheilung, Grad</translation>
    </message>
    <message>
        <location filename="../../../ui/drawing.py"/>
        <source>Waveform over a revolution, mean and standard deviation of {0}</source>
        <translation>Verlauf über eine Umdrehung, Mittel und Standardabweichung aus {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/drawing.py"/>
        <source>degrees from the pulse</source>
        <translation>Grad ab dem Impuls</translation>
    </message>
    <message>
        <location filename="../../../ui/drawing.py"/>
        <source>{0} at {1} r/min, lag from the pulse</source>
        <translation>{0} bei {1} r/min, Nacheilung ab dem Impuls</translation>
    </message>
    <message>
        <location filename="../../../ui/drawing.py"/>
        <source>{0}, against rotation from the mark</source>
        <translation>{0}, gegen den Drehsinn ab der Marke</translation>
    </message>
    <message>
        <location filename="../../../ui/drawing.py"/>
        <source>corrections, trial masses off</source>
        <translation>Ausgleich, Testmassen ab</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>within the scatter</source>
        <translation>innerhalb der Streuung</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>at the edge of the scatter</source>
        <translation>am Rand der Streuung</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>stands out of the scatter</source>
        <translation>deutlich über der Streuung</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>margin {0} %</source>
        <translation>Abstand {0} %</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>no resonance was found</source>
        <translation>keine Resonanz gefunden</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>{0}: by the brief at {1} ± {2} Hz; {3}</source>
        <translation>{0}: laut Aufgabe bei {1} ± {2} Hz; {3}</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>no peak fits it alone</source>
        <translation>keine Spitze passt allein dazu</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>{0} at {1} Hz, {2} {3} at {4}</source>
        <translation>{0} bei {1} Hz, {2} {3} an {4}</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>{0}: resonance at {1} r/min, amplification {2}</source>
        <translation>{0}: Resonanz bei {1} r/min, Überhöhung {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>bump test: the brief does not say the running speed; set "rotor.speed_rpm"</source>
        <translation>Anschlagversuch: die Aufgabe nennt die Betriebsdrehzahl nicht; dort angeben</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>looking for hits</source>
        <translation>Schläge werden gesucht</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>{0} Hz ({1} r/min), damping ratio {2}, seen best at {3}</source>
        <translation>{0} Hz ({1} r/min), Dämpfungsgrad {2}, am besten zu sehen bei {3}</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>listening to the neighbours</source>
        <translation>lauscht den Nachbarn</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>{0}: {1} ± {2} {3} with the machine stopped</source>
        <translation>{0}: {1} ± {2} {3} bei stehender Maschine</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>settling: {0}; look at pulse and sensors</source>
        <translation>Einlaufen: {0}; Impuls und Sensoren ansehen</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>swap: name two of the points {0}, whose sensors sit in each other's place now</source>
        <translation>Tausch: zwei der Messpunkte {0} nennen, deren Sensoren jetzt am Platz des anderen sitzen</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>swap of sensors</source>
        <translation>Sensortausch</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>runs "{0}" and "{1}": have no point with a phase in one unit in common</source>
        <translation>Läufe „{0}“ und „{1}“: haben keinen Messpunkt mit Phase in gleicher Einheit gemeinsam</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>{0}: samples were lost in it; record again</source>
        <translation>{0}: darin gingen Abtastwerte verloren; neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>{0}: {1} s are too long; 5 to {2} s do</source>
        <translation>{0}: {1} s sind zu lang; 5 bis {2} s genügen</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>reading the signals</source>
        <translation>Signale werden gelesen</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>background: is held against 1x; take an initial run first</source>
        <translation>Hintergrund: wird mit 1x verglichen; erst einen Urlauf machen</translation>
    </message>
    <message>
        <location filename="../../../ui/job_facts.py"/>
        <source>goal.table: "{0}" is no table of vibration limits</source>
        <translation>Grenzwerttabelle: „{0}“ ist keine Tabelle von Schwingungsgrenzwerten</translation>
    </message>
    <message>
        <location filename="../../../ui/job_facts.py"/>
        <source>planes {0}.radius</source>
        <translation>Radius der Ebene {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/job_facts.py"/>
        <source>trial mass: the brief does not say {0}; set it first</source>
        <translation>Testmasse: in der Aufgabe fehlt {0}; erst angeben</translation>
    </message>
    <message>
        <location filename="../../../ui/job_facts.py"/>
        <source>abort "{0}".unit</source>
        <translation>Einheit des Abschaltpegels „{0}“</translation>
    </message>
    <message>
        <location filename="../../../ui/job_facts.py"/>
        <source>goal, {0}</source>
        <translation>Ziel, {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/job_facts.py"/>
        <source>there is {0}, with a class behind a comma, or a file of your own</source>
        <translation>es gibt {0}, mit einer Klasse nach einem Komma, oder eine eigene Datei</translation>
    </message>
    <message>
        <location filename="../../../ui/job_facts.py"/>
        <source>goal.table: "{0}" is no table of vibration limits; {1}</source>
        <translation>goal.table: „{0}“ ist keine Tabelle von Schwingungsgrenzen; {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/job_masses.py"/>
        <source>"disc = 10 g at 270", "disc = 10 g at position 5", or with ", radius 290 mm" and ", fixing bolted" after it</source>
        <translation>"disc = 10 g at 270", "disc = 10 g at position 5", oder mit ", radius 290 mm" und ", fixing bolted" dahinter</translation>
    </message>
    <message>
        <location filename="../../../ui/job_masses.py"/>
        <source>mass "{0}": write plane, mass and place: {1}</source>
        <translation>Masse „{0}“: Ebene, Masse und Platz schreiben: {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/job_masses.py"/>
        <source>mass on "{0}"</source>
        <translation>Masse in „{0}“</translation>
    </message>
    <message>
        <location filename="../../../ui/job_masses.py"/>
        <source>mass "{0}": {1} g is no mass; metal that was removed is below 0</source>
        <translation>Masse „{0}“: {1} g ist keine Masse; abgetragenes Metall ist kleiner als 0</translation>
    </message>
    <message>
        <location filename="../../../ui/job_masses.py"/>
        <source>plane "{0}": there is none; </source>
        <translation>Ebene „{0}“: gibt es nicht; </translation>
    </message>
    <message>
        <location filename="../../../ui/job_masses.py"/>
        <source>the brief has {0}</source>
        <translation>die Aufgabe hat {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/job_masses.py"/>
        <source>the brief has no plane yet: add one</source>
        <translation>die Aufgabe hat noch keine Ebene: eine hinzufügen</translation>
    </message>
    <message>
        <location filename="../../../ui/job_masses.py"/>
        <source>plane "{0}": has no positions; give an angle in degrees against rotation</source>
        <translation>Ebene „{0}“: hat keine Stellen; einen Winkel in Grad gegen den Drehsinn angeben</translation>
    </message>
    <message>
        <location filename="../../../ui/job_masses.py"/>
        <source>plane "{0}": position {1} does not exist; there are 1 to {2}</source>
        <translation>Ebene „{0}“: Stelle {1} gibt es nicht; es gibt 1 bis {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/job_masses.py"/>
        <source>plane "{0}": position {1} is blocked by the brief; choose another</source>
        <translation>Ebene „{0}“: Stelle {1} ist laut Aufgabe gesperrt; eine andere wählen</translation>
    </message>
    <message>
        <location filename="../../../ui/job_masses.py"/>
        <source>mass "{0}": radius {1} must be above 0</source>
        <translation>Masse „{0}“: Radius {1} muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../ui/job_masses.py"/>
        <source>mass "{0}": "{1}" says nothing; write {2}</source>
        <translation>Masse „{0}“: „{1}“ sagt nichts; schreiben: {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/job_masses.py"/>
        <source>{0} {1} g at {2}{3}{4}</source>
        <translation>{0} {1} g bei {2}{3}{4}</translation>
    </message>
    <message>
        <location filename="../../../ui/job_masses.py"/>
        <source>"{0}": is not on the rotor; on it is {1}</source>
        <translation>„{0}“: sitzt nicht auf dem Rotor; darauf sitzt {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/job_visit.py"/>
        <source>no coefficients were taken over: {0}</source>
        <translation>keine Koeffizienten übernommen: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/job_visit.py"/>
        <source>the runs file says that the rotor is flexible: grades do not apply</source>
        <translation>die Laufdatei nennt den Rotor nachgiebig: Gütestufen gelten nicht</translation>
    </message>
    <message>
        <location filename="../../../ui/job_visit.py"/>
        <source>the runs file assumes a repeatability of {0}: say in the brief what calls for it</source>
        <translation>die Laufdatei nimmt eine Wiederholbarkeit von {0} an: in der Aufgabe sagen, was sie verlangt</translation>
    </message>
    <message>
        <location filename="../../../ui/library.py"/>
        <source>{0} of {1} jobs</source>
        <translation>{0} von {1} Aufträgen</translation>
    </message>
    <message>
        <location filename="../../../ui/library.py"/>
        <source>has more than {0} folders: list a part of it</source>
        <translation>hat mehr als {0} Ordner: einen Teil davon wählen</translation>
    </message>
    <message>
        <location filename="../../../ui/library.py"/>
        <source>{0}: cannot be read: {1}; name a folder</source>
        <translation>{0}: nicht lesbar: {1}; einen Ordner nennen</translation>
    </message>
    <message>
        <location filename="../../../ui/library.py"/>
        <source>is a link and is not followed; list the folder itself</source>
        <translation>ist eine Verknüpfung und wird nicht verfolgt; den Ordner selbst wählen</translation>
    </message>
    <message>
        <location filename="../../../ui/library.py"/>
        <source>has folders more than {0} deep, which are not looked at</source>
        <translation>hat Ordner tiefer als {0}, die nicht angesehen werden</translation>
    </message>
    <message>
        <location filename="../../../ui/library.py"/>
        <source>began as the same job as {0}, which is longer or the same</source>
        <translation>begann als derselbe Auftrag wie {0}, der länger oder gleich ist</translation>
    </message>
    <message>
        <location filename="../../../ui/library.py"/>
        <source>its jobs give more than one {0} ({1}): is it one machine?</source>
        <translation>ihre Aufträge geben zu „{0}“ Verschiedenes an ({1}): ist es eine Maschine?</translation>
    </message>
    <message>
        <location filename="../../../ui/library.py"/>
        <source>machine "{0}": {1} go by it, because briefs give no machine ({2}); name one job's folder instead of all, or write the machine into the briefs</source>
        <translation>Maschine „{0}“: {1} heißen so, weil Aufgaben keine Maschine nennen ({2}); statt aller den Ordner eines Auftrags nennen, oder die Maschine in die Aufgaben schreiben</translation>
    </message>
    <message>
        <location filename="../../../ui/library.py"/>
        <source>no machine</source>
        <translation>keine Maschine</translation>
    </message>
    <message>
        <location filename="../../../ui/library.py"/>
        <source>machine "{0}": is not in {1}; there is {2}</source>
        <translation>Maschine „{0}“: ist nicht in {1}; es gibt {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/library.py"/>
        <source>one run only</source>
        <translation>nur ein Lauf</translation>
    </message>
    <message>
        <location filename="../../../ui/library.py"/>
        <source>in {0} and {1}</source>
        <translation>in {0} und {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/library.py"/>
        <source>at {0} and {1} r/min</source>
        <translation>bei {0} und {1} r/min</translation>
    </message>
    <message>
        <location filename="../../../ui/library.py"/>
        <source>the first is 0</source>
        <translation>der erste ist 0</translation>
    </message>
    <message>
        <location filename="../../../ui/library.py"/>
        <source>{0}: there is no such file; leave --coefficients out, or name the right one</source>
        <translation>{0}: die Datei gibt es nicht; --coefficients weglassen oder die richtige nennen</translation>
    </message>
    <message>
        <location filename="../../../ui/library_index.py"/>
        <source>ids that do not grow</source>
        <translation>Nummern, die nicht steigen</translation>
    </message>
    <message>
        <location filename="../../../ui/library_index.py"/>
        <source>a time that is not UTC</source>
        <translation>eine Zeit, die nicht UTC ist</translation>
    </message>
    <message>
        <location filename="../../../ui/live.py"/>
        <source>measuring ended by a fault of the program ({0}); start the source again</source>
        <translation>Messung durch einen Programmfehler beendet ({0}); die Quelle neu starten</translation>
    </message>
    <message>
        <location filename="../../../ui/report.py"/>
        <source>units "{0}": are none; choose {1}</source>
        <translation>Einheiten „{0}“: gibt es nicht; wählen: {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/report.py"/>
        <source>begun {0}, </source>
        <translation>begonnen {0}, </translation>
    </message>
    <message>
        <location filename="../../../ui/report.py"/>
        <source>Balancing report, {0}, {1}made {2}</source>
        <translation>Auswuchtbericht, {0}, {1}erstellt {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/report.py"/>
        <source>Balancing report, {0}made {1}</source>
        <translation>Auswuchtbericht, {0}erstellt {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/report.py"/>
        <source>paper "{0}": is none; choose {1}</source>
        <translation>Papier „{0}“: gibt es nicht; wählen: {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/report.py"/>
        <source>{0}: is no file name; choose another</source>
        <translation>{0}: ist kein Dateiname; einen anderen wählen</translation>
    </message>
    <message>
        <location filename="../../../ui/report.py"/>
        <source>{0}: there is no folder {1}; make it first, or choose another place</source>
        <translation>{0}: den Ordner {1} gibt es nicht; erst anlegen oder anderen Ort wählen</translation>
    </message>
    <message>
        <location filename="../../../ui/report.py"/>
        <source>{0}: is a folder; name a file in it</source>
        <translation>{0}: ist ein Ordner; eine Datei darin nennen</translation>
    </message>
    <message>
        <location filename="../../../ui/report.py"/>
        <source>{0}: lies within a job's folder, where only {1}/ takes reports; choose another place</source>
        <translation>{0}: liegt im Ordner eines Auftrags, wo nur {1}/ Berichte aufnimmt; anderen Ort wählen</translation>
    </message>
    <message>
        <location filename="../../../ui/report.py"/>
        <source>{0}: is there already and may be part of the job's record; choose another name</source>
        <translation>{0}: gibt es schon und gehört vielleicht zum Protokoll des Auftrags; anderen Namen wählen</translation>
    </message>
    <message>
        <location filename="../../../ui/report.py"/>
        <source>{0}; name a file elsewhere for the report</source>
        <translation>{0}; für den Bericht eine Datei an anderem Ort nennen</translation>
    </message>
    <message>
        <location filename="../../../ui/report_material.py"/>
        <source>checking the files</source>
        <translation>Dateien werden geprüft</translation>
    </message>
    <message>
        <location filename="../../../ui/report_material.py"/>
        <source>recorded with the verdict, entry {0}</source>
        <translation>mit dem Ergebnis protokolliert, Eintrag {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/report_material.py"/>
        <source> on run "{0}"</source>
        <translation> zu Lauf „{0}“</translation>
    </message>
    <message>
        <location filename="../../../ui/report_material.py"/>
        <source>worked out for this report{0}; no such figures were recorded with a verdict</source>
        <translation>für diesen Bericht berechnet{0}; mit keinem Ergebnis wurden solche Werte protokolliert</translation>
    </message>
    <message>
        <location filename="../../../ui/report_material.py"/>
        <source>it has no recording</source>
        <translation>er hat keine Aufnahme</translation>
    </message>
    <message>
        <location filename="../../../ui/report_material.py"/>
        <source>the course of its phase was not kept with it; its recording has it</source>
        <translation>der Verlauf seiner Phase wurde nicht mitgespeichert; seine Aufnahme hat ihn</translation>
    </message>
    <message>
        <location filename="../../../ui/report_material.py"/>
        <source>entry {0} ({1}): </source>
        <translation>Eintrag {0} ({1}): </translation>
    </message>
    <message>
        <location filename="../../../ui/report_material.py"/>
        <source>the job's folder</source>
        <translation>der Ordner des Auftrags</translation>
    </message>
    <message>
        <location filename="../../../ui/runs_files.py"/>
        <source>mass "{0}": write plane, mass and angle, such as "left = 10 g at 270"</source>
        <translation>Masse „{0}“: Ebene, Masse und Winkel schreiben, etwa „left = 10 g at 270“</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>the job has no hook-up yet: set one before a run</source>
        <translation>der Auftrag hat noch keinen Anschluss: vor einem Lauf festlegen</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>{0}; the recording is kept, and no run was made of it</source>
        <translation>{0}; die Aufnahme bleibt, es wurde kein Lauf daraus</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>close: trial masses are still on ({0}); take them off, or record them as part of the correction</source>
        <translation>Abschließen: Testmassen sind noch dran ({0}); abnehmen oder als Teil des Ausgleichs protokollieren</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>close: there is no verdict to accept or refuse; record one first</source>
        <translation>Abschließen: kein Ergebnis zum Annehmen oder Ablehnen; erst eines protokollieren</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>verdict: the brief has neither goal, rotor mass nor limits; set goal.grade and rotor.mass, or limits</source>
        <translation>Ergebnis: die Aufgabe hat weder Ziel noch Rotormasse noch Grenzwerte; Gütestufe und Rotormasse oder Grenzwerte angeben</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>mark moved</source>
        <translation>Marke bewegt</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>really placed</source>
        <translation>wirklich platziert</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>seen in a recording that was made elsewhere</source>
        <translation>gesehen in einer anderswo gemachten Aufnahme</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>{0}: {1}; what was recorded is kept there, and no run was made of it</source>
        <translation>{0}: {1}; das Aufgenommene bleibt dort, und es wurde kein Lauf daraus</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>run: "{0}" is no purpose; there is {1}</source>
        <translation>Lauf: „{0}“ ist kein Zweck; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>{0}: there is no such recording</source>
        <translation>{0}: die Aufnahme gibt es nicht</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>{0}: is the recording of run "{1}" already</source>
        <translation>{0}: ist schon die Aufnahme von Lauf „{1}“</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>run "{0}": there is none; there is {1}</source>
        <translation>Lauf „{0}“: gibt es nicht; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>say what it told</source>
        <translation>angeben, was sich ergab</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>no trial mass that was taken off lacks a note</source>
        <translation>bei keiner abgenommenen Testmasse fehlt ein Vermerk</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>weighing back: {0}</source>
        <translation>Zurückwiegen: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>weighing back: entry {0} took no trial mass off that lacks a note; {1} did</source>
        <translation>Zurückwiegen: Eintrag {0} nahm keine Testmasse ohne Vermerk ab; das waren {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>trial mass weighed back in: {0}</source>
        <translation>Testmasse zurückgewogen: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>no coefficients were taken over from an earlier visit: take trial runs</source>
        <translation>von einem früheren Einsatz wurden keine Koeffizienten übernommen: Testläufe machen</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>correction by stored coefficients</source>
        <translation>Ausgleich nach gespeicherten Koeffizienten</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>point "{0}": is none of the hook-up; there is {1}</source>
        <translation>Messpunkt „{0}“: gibt es im Anschluss nicht; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>cleaned: there is no run yet whose initial state could have changed</source>
        <translation>gereinigt: es gibt noch keinen Lauf, dessen Urzustand sich geändert haben könnte</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>skip: needs a reason</source>
        <translation>Übergehen: braucht einen Grund</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>it cannot be passed over</source>
        <translation>das lässt sich nicht übergehen</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>skip: "{0}" cannot be passed over; it is what comes next</source>
        <translation>Übergehen: „{0}“ lässt sich nicht übergehen; es kommt als Nächstes</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>stop: needs a reason</source>
        <translation>Beenden: braucht einen Grund</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>pieces: the brief names no stock; say what is at hand, such as "stock = 5 g x 10, 10 g x 4"</source>
        <translation>Stücke: die Aufgabe nennt keinen Vorrat; angeben, was da ist, etwa „stock = 5 g x 10, 10 g x 4“</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>reference: a turn of {0}°: must be within 360° either way, or left out if unknown</source>
        <translation>Bezug: eine Verdrehung von {0}°: muss innerhalb ± 360° liegen, oder weggelassen werden, wenn sie unbekannt ist</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>close: a verdict is accepted or refused by somebody with a name; write it</source>
        <translation>Abschließen: ein Ergebnis nimmt jemand mit Namen an oder lehnt es ab; den Namen angeben</translation>
    </message>
    <message>
        <location filename="../../../ui/session_base.py"/>
        <source>taken over</source>
        <translation>übernommen</translation>
    </message>
    <message>
        <location filename="../../../ui/session_base.py"/>
        <source>{0}: {1} is missing</source>
        <translation>{0}: {1} fehlt</translation>
    </message>
    <message>
        <location filename="../../../ui/session_base.py"/>
        <source>{0}: belongs to no run; take it with --recording, or leave it</source>
        <translation>{0}: gehört zu keinem Lauf; einen daraus machen oder sie liegen lassen</translation>
    </message>
    <message>
        <location filename="../../../ui/session_base.py"/>
        <source>hook-up: runs were taken with another one; record first what changed, as a change of reference</source>
        <translation>Anschluss: Läufe wurden mit einem anderen gemacht; erst als Änderung des Bezugs protokollieren, was sich änderte</translation>
    </message>
    <message>
        <location filename="../../../ui/session_base.py"/>
        <source>check "{0}": is none of this machine's; there is {1}</source>
        <translation>Prüfung „{0}“: gehört nicht zu dieser Maschine; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/session_base.py"/>
        <source>{0}: there is no such photo</source>
        <translation>{0}: das Foto gibt es nicht</translation>
    </message>
    <message>
        <location filename="../../../ui/session_base.py"/>
        <source>check "{0}": is none; there is {1}</source>
        <translation>Prüfung „{0}“: gibt es nicht; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/session_base.py"/>
        <source>repeatability: needs two runs without masses; stop, start again, and take a second</source>
        <translation>Wiederholbarkeit: braucht zwei Läufe ohne Massen; anhalten, neu starten und einen zweiten machen</translation>
    </message>
    <message>
        <location filename="../../../ui/session_base.py"/>
        <source>{0}: needs a recording or a source</source>
        <translation>{0}: braucht eine Aufnahme oder eine Quelle</translation>
    </message>
    <message>
        <location filename="../../../ui/session_base.py"/>
        <source>{0}; nothing can be recorded</source>
        <translation>{0}; nichts kann protokolliert werden</translation>
    </message>
    <message>
        <location filename="../../../ui/session_base.py"/>
        <source>{0}: is open to read only</source>
        <translation>{0}: ist nur zum Lesen offen</translation>
    </message>
    <message>
        <location filename="../../../ui/session_base.py"/>
        <source>{0}: the job is closed; reopen it first</source>
        <translation>{0}: der Auftrag ist abgeschlossen; erst wieder öffnen</translation>
    </message>
    <message>
        <location filename="../../../ui/session_base.py"/>
        <source>{0}: carries no hook-up, and the job has none yet; set it first</source>
        <translation>{0}: enthält keinen Anschluss, und der Auftrag hat noch keinen; erst festlegen</translation>
    </message>
    <message>
        <location filename="../../../ui/session_base.py"/>
        <source>{0}: was recorded with another hook-up than the job's: sensors, places or pulse differ; give the recording of this job, or record what changed as a change of reference and set the new hook-up</source>
        <translation>{0}: wurde mit anderem Anschluss als dem des Auftrags aufgenommen: Sensoren, Plätze oder Impuls weichen ab; die Aufnahme dieses Auftrags nehmen, oder die Änderung des Bezugs protokollieren und den neuen Anschluss festlegen</translation>
    </message>
    <message>
        <location filename="../../../ui/session_base.py"/>
        <source>{0}: cannot be copied to {1}: {2}</source>
        <translation>{0}: lässt sich nicht nach {1} kopieren: {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/settling.py"/>
        <source>nothing could be measured in {0}</source>
        <translation>in {0} war nichts zu messen</translation>
    </message>
    <message>
        <location filename="../../../ui/settling.py"/>
        <source>{0}; whether it has settled takes five minutes to tell</source>
        <translation>{0}; ob es eingelaufen ist, zeigt sich nach fünf Minuten</translation>
    </message>
    <message>
        <location filename="../../../ui/settling.py"/>
        <source>settled after {0}: {1}: {2}</source>
        <translation>eingelaufen nach {0}: {1}: {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/settling.py"/>
        <source>not settled after {0}: {1}: {2}</source>
        <translation>nicht eingelaufen nach {0}: {1}: {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/settling.py"/>
        <source>{0}: there is no 1x to follow</source>
        <translation>{0}: es gibt kein 1x zu verfolgen</translation>
    </message>
    <message>
        <location filename="../../../ui/settling.py"/>
        <source>{0}: 1x moved by {1} % and {2}° in {3}</source>
        <translation>{0}: 1x bewegte sich in {3} um {1} % und {2}°</translation>
    </message>
    <message>
        <location filename="../../../ui/taking.py"/>
        <source>interval "{0}": write percent of the amplitude and degrees, such as "2 % 1 deg"</source>
        <translation>Bereich „{0}“: Prozent der Amplitude und Grad schreiben, etwa „2 % 1 deg“</translation>
    </message>
    <message>
        <location filename="../../../ui/taking.py"/>
        <source>the source ended</source>
        <translation>die Quelle ist zu Ende</translation>
    </message>
    <message>
        <location filename="../../../ui/taking.py"/>
        <source>{0} more revolution</source>
        <translation>{0} weitere Umdrehung</translation>
    </message>
    <message>
        <location filename="../../../ui/taking.py"/>
        <source>{0} more revolutions</source>
        <translation>{0} weitere Umdrehungen</translation>
    </message>
    <message>
        <location filename="../../../ui/taking.py"/>
        <source>{0} s of even speed</source>
        <translation>{0} s gleichmäßige Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/taking.py"/>
        <source>the speed: {0} % off in {1} s, {2} % wanted</source>
        <translation>die Drehzahl: {0} % Abweichung in {1} s, gewünscht {2} %</translation>
    </message>
    <message>
        <location filename="../../../ui/taking.py"/>
        <source>{0}, which drifts</source>
        <translation>{0}: driftet</translation>
    </message>
    <message>
        <location filename="../../../ui/taking.py"/>
        <source>a whole beat of {0} s</source>
        <translation>eine ganze Schwebung von {0} s</translation>
    </message>
    <message>
        <location filename="../../../ui/taking.py"/>
        <source>a verdict on steadiness</source>
        <translation>ein Urteil über die Stabilität</translation>
    </message>
    <message>
        <location filename="../../../ui/taking.py"/>
        <source>the interval of {0}, which has no bound yet</source>
        <translation>der Bereich von {0}, noch ohne Schranke</translation>
    </message>
    <message>
        <location filename="../../../ui/taking.py"/>
        <source>{0}: ± {1} % and ± {2}° now</source>
        <translation>{0}: jetzt ± {1} % und ± {2}°</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>{0}: carries no hook-up; name one with --hookup FILE</source>
        <translation>{0}: enthält keinen Anschluss; einen angeben</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>lost samples at {0} places</source>
        <translation>verlor an {0} Stellen Abtastwerte</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>close other programs; try another port or cable</source>
        <translation>andere Programme schließen; anderen Anschluss oder anderes Kabel versuchen</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>tap at {0}, towards its sensor</source>
        <translation>bei {0} zum Sensor hin klopfen</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>the tap shows at input {0} ("{1}")</source>
        <translation>das Klopfen zeigt sich an Eingang {0} („{1}“)</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>change the cables or the input numbers in the hook-up</source>
        <translation>Kabel oder Eingangsnummern im Anschluss tauschen</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>turn the sensor, or set inverted the other way in the hook-up</source>
        <translation>den Sensor drehen oder „Umgepolt“ im Anschluss umstellen</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>the tap towards the sensor reads negative</source>
        <translation>das Klopfen zum Sensor hin zeigt negativ an</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>the tap shows here and reads positive</source>
        <translation>das Klopfen zeigt sich hier und positiv</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>no tap was seen in {0} s</source>
        <translation>in {0} s kein Klopfen gesehen</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>check cable and mounting</source>
        <translation>Kabel und Befestigung prüfen</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>method "{0}": {1} or {2}</source>
        <translation>Verfahren „{0}“: {1} oder {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>voltage: say how many, as rms of the sine, with --volts "1 V"</source>
        <translation>Spannung: als Effektivwert des Sinus angeben, etwa „1 V“</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>{0}: {1} s are too long; 5 to 120 s will do</source>
        <translation>{0}: {1} s sind zu lang; 5 bis 120 s genügen</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>{0}: samples were lost in it: record again</source>
        <translation>{0}: darin gingen Abtastwerte verloren: neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>{0}: measures {1}; a shaker calibrates accelerometers</source>
        <translation>{0}: misst {1}; ein Erreger kalibriert Beschleunigungssensoren</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>reads {0} ± {1} of the pulse input</source>
        <translation>zeigt das {0} ± {1}-Fache des Impulseingangs</translation>
    </message>
    <message>
        <location filename="../../../ui/wiring.py"/>
        <source>; {0}° of phase are left that no delay explains: calibrate its AC-coupling corner with a step</source>
        <translation>; {0}° Phase bleiben, die kein Verzug erklärt: die Eckfrequenz der AC-Kopplung mit einem Sprung kalibrieren</translation>
    </message>
</context>
</TS>
