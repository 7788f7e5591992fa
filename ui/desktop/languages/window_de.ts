<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>stillshaft</name>
    <message>
        <source>light</source>
        <translation>hell</translation>
    </message>
    <message>
        <source>dark</source>
        <translation>dunkel</translation>
    </message>
    <message>
        <source>sunlight</source>
        <translation>Sonnenlicht</translation>
    </message>
    <message>
        <source>normal</source>
        <translation>normal</translation>
    </message>
    <message>
        <source>large</source>
        <translation>groß</translation>
    </message>
    <message>
        <source>largest</source>
        <translation>sehr groß</translation>
    </message>
    <message>
        <source>empty</source>
        <translation>leer</translation>
    </message>
    <message>
        <source>done</source>
        <translation>fertig</translation>
    </message>
    <message>
        <source>{0} ± {1} Hz (60 r/min), damping ratio {2}, seen best at {3}</source>
        <translation>{0} ± {1} Hz (60 r/min), Dämpfungsgrad {2}, am besten zu sehen bei {3}</translation>
    </message>
    <message>
        <source>{0} ± {1} Hz ( r/min), damping ratio {2}, seen best at {3}</source>
        <translation>{0} ± {1} Hz ( r/min), Dämpfungsgrad {2}, am besten zu sehen bei {3}</translation>
    </message>
    <message>
        <source>1000.0 mm of rod</source>
        <translation>1000.0 mm Elektrode</translation>
    </message>
    <message>
        <source> mm of rod</source>
        <translation> mm Elektrode</translation>
    </message>
    <message>
        <source>threshold at 100.0 % of full scale</source>
        <translation>Schwelle bei 100.0 % der Vollaussteuerung</translation>
    </message>
    <message>
        <source>threshold at  % of full scale</source>
        <translation>Schwelle bei  % der Vollaussteuerung</translation>
    </message>
    <message>
        <source>acceleration</source>
        <translation>Beschleunigung</translation>
    </message>
    <message>
        <source>adhesive</source>
        <translation>Kleber</translation>
    </message>
    <message>
        <source>agreed</source>
        <translation>vereinbart</translation>
    </message>
    <message>
        <source>auto</source>
        <translation>automatisch</translation>
    </message>
    <message>
        <source>axial</source>
        <translation>axial</translation>
    </message>
    <message>
        <source>belt</source>
        <translation>Riemen</translation>
    </message>
    <message>
        <source>build-up</source>
        <translation>Belag</translation>
    </message>
    <message>
        <source>clearances</source>
        <translation>Spalte</translation>
    </message>
    <message>
        <source>clockwise</source>
        <translation>im Uhrzeigersinn</translation>
    </message>
    <message>
        <source>counter-clockwise</source>
        <translation>gegen den Uhrzeigersinn</translation>
    </message>
    <message>
        <source>contract</source>
        <translation>Vertrag</translation>
    </message>
    <message>
        <source>Dc</source>
        <translation>DC</translation>
    </message>
    <message>
        <source>Ac</source>
        <translation>AC</translation>
    </message>
    <message>
        <source>default</source>
        <translation>Vorgabe</translation>
    </message>
    <message>
        <source>differential</source>
        <translation>differentiell</translation>
    </message>
    <message>
        <source>pseudo-differential</source>
        <translation>pseudodifferentiell</translation>
    </message>
    <message>
        <source>single-ended</source>
        <translation>massebezogen</translation>
    </message>
    <message>
        <source>direct</source>
        <translation>direkt</translation>
    </message>
    <message>
        <source>displacement</source>
        <translation>Schwingweg</translation>
    </message>
    <message>
        <source>velocity</source>
        <translation>Schwinggeschwindigkeit</translation>
    </message>
    <message>
        <source>falling</source>
        <translation>fallend</translation>
    </message>
    <message>
        <source>rising</source>
        <translation>steigend</translation>
    </message>
    <message>
        <source>stud</source>
        <translation>Gewindebolzen</translation>
    </message>
    <message>
        <source>flexible</source>
        <translation>nachgiebig</translation>
    </message>
    <message>
        <source>rigid</source>
        <translation>starr</translation>
    </message>
    <message>
        <source>gear</source>
        <translation>Getriebe</translation>
    </message>
    <message>
        <source>heat</source>
        <translation>Wärme</translation>
    </message>
    <message>
        <source>history</source>
        <translation>Vorgeschichte</translation>
    </message>
    <message>
        <source>initial</source>
        <translation>Urlauf</translation>
    </message>
    <message>
        <source>trial</source>
        <translation>Test</translation>
    </message>
    <message>
        <source>check</source>
        <translation>Kontrolle</translation>
    </message>
    <message>
        <source>trim</source>
        <translation>Nachwuchten</translation>
    </message>
    <message>
        <source>repeat</source>
        <translation>Wiederholung</translation>
    </message>
    <message>
        <source>re-reference</source>
        <translation>Bezugslauf</translation>
    </message>
    <message>
        <source>correction</source>
        <translation>Ausgleich</translation>
    </message>
    <message>
        <source>load</source>
        <translation>Last</translation>
    </message>
    <message>
        <source>missing</source>
        <translation>fehlend</translation>
    </message>
    <message>
        <source>wide</source>
        <translation>breit</translation>
    </message>
    <message>
        <source>unequal</source>
        <translation>ungleich</translation>
    </message>
    <message>
        <source>single</source>
        <translation>einzeln</translation>
    </message>
    <message>
        <source>neighbours</source>
        <translation>Nachbarn</translation>
    </message>
    <message>
        <source>no</source>
        <translation>nein</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>other</source>
        <translation>andere</translation>
    </message>
    <message>
        <source>overhung</source>
        <translation>fliegend</translation>
    </message>
    <message>
        <source>planes</source>
        <translation>Ebenen</translation>
    </message>
    <message>
        <source>pulse</source>
        <translation>Impuls</translation>
    </message>
    <message>
        <source>radial</source>
        <translation>radial</translation>
    </message>
    <message>
        <source>setpoint</source>
        <translation>Sollwert</translation>
    </message>
    <message>
        <source>slowly</source>
        <translation>langsam</translation>
    </message>
    <message>
        <source>suddenly</source>
        <translation>plötzlich</translation>
    </message>
    <message>
        <source>unknown</source>
        <translation>unbekannt</translation>
    </message>
    <message>
        <source>wear</source>
        <translation>Verschleiß</translation>
    </message>
    <message>
        <source>after</source>
        <translation>nachher</translation>
    </message>
    <message>
        <source>before</source>
        <translation>vorher</translation>
    </message>
    <message>
        <source>bolted</source>
        <translation>verschraubt</translation>
    </message>
    <message>
        <source>welded</source>
        <translation>geschweißt</translation>
    </message>
    <message>
        <source>clamped</source>
        <translation>geklemmt</translation>
    </message>
    <message>
        <source>drilled</source>
        <translation>gebohrt</translation>
    </message>
    <message>
        <source>ground</source>
        <translation>geschliffen</translation>
    </message>
    <message>
        <source>taped</source>
        <translation>geklebt (Band)</translation>
    </message>
    <message>
        <source>magnet</source>
        <translation>Magnet</translation>
    </message>
    <message>
        <source>tape</source>
        <translation>Band</translation>
    </message>
    <message>
        <source>bow</source>
        <translation>Verkrümmung</translation>
    </message>
    <message>
        <source>couple</source>
        <translation>Momentenanteil</translation>
    </message>
    <message>
        <source>fan</source>
        <translation>Ventilator</translation>
    </message>
    <message>
        <source>pump</source>
        <translation>Pumpe</translation>
    </message>
    <message>
        <source>motor</source>
        <translation>Motor</translation>
    </message>
    <message>
        <source>met</source>
        <translation>eingehalten</translation>
    </message>
    <message>
        <source>open</source>
        <translation>offen</translation>
    </message>
    <message>
        <source>closed</source>
        <translation>abgeschlossen</translation>
    </message>
    <message>
        <source>refuses</source>
        <translation>lehnt ab</translation>
    </message>
    <message>
        <source>accepts</source>
        <translation>nimmt ab</translation>
    </message>
    <message>
        <source>accepted</source>
        <translation>angenommen</translation>
    </message>
    <message>
        <source>refused</source>
        <translation>abgelehnt</translation>
    </message>
    <message>
        <source>starting</source>
        <translation>startet</translation>
    </message>
    <message>
        <source>running</source>
        <translation>läuft</translation>
    </message>
    <message>
        <source>stopping</source>
        <translation>hält an</translation>
    </message>
    <message>
        <source>stopped</source>
        <translation>angehalten</translation>
    </message>
    <message>
        <source>usual</source>
        <translation>üblich</translation>
    </message>
    <message>
        <source>steady</source>
        <translation>stabil</translation>
    </message>
    <message>
        <source>settling</source>
        <translation>läuft ein</translation>
    </message>
    <message>
        <source>drifting</source>
        <translation>driftet</translation>
    </message>
    <message>
        <source>drift</source>
        <translation>Drift</translation>
    </message>
    <message>
        <source>wandering</source>
        <translation>wandert</translation>
    </message>
    <message>
        <source>noisy</source>
        <translation>verrauscht</translation>
    </message>
    <message>
        <source>turning</source>
        <translation>dreht</translation>
    </message>
    <message>
        <source>small</source>
        <translation>klein</translation>
    </message>
    <message>
        <source>weak</source>
        <translation>schwach</translation>
    </message>
    <message>
        <source>fine</source>
        <translation>in Ordnung</translation>
    </message>
    <message>
        <source>good</source>
        <translation>gut</translation>
    </message>
    <message>
        <source>bad</source>
        <translation>schlecht</translation>
    </message>
    <message>
        <source>usable</source>
        <translation>brauchbar</translation>
    </message>
    <message>
        <source>likely</source>
        <translation>wahrscheinlich</translation>
    </message>
    <message>
        <source>possible</source>
        <translation>möglich</translation>
    </message>
    <message>
        <source>unlikely</source>
        <translation>unwahrscheinlich</translation>
    </message>
    <message>
        <source>balance</source>
        <translation>auswuchten</translation>
    </message>
    <message>
        <source>dirty</source>
        <translation>schmutzig</translation>
    </message>
    <message>
        <source>clean</source>
        <translation>sauber</translation>
    </message>
    <message>
        <source>damaged</source>
        <translation>beschädigt</translation>
    </message>
    <message>
        <source>found</source>
        <translation>gefunden</translation>
    </message>
    <message>
        <source>loose</source>
        <translation>lose</translation>
    </message>
    <message>
        <source>tight</source>
        <translation>fest</translation>
    </message>
    <message>
        <source>quiet</source>
        <translation>ruhig</translation>
    </message>
    <message>
        <source>worn</source>
        <translation>verschlissen</translation>
    </message>
    <message>
        <source>fell</source>
        <translation>fiel</translation>
    </message>
    <message>
        <source>stayed</source>
        <translation>blieb</translation>
    </message>
    <message>
        <source>outside</source>
        <translation>außerhalb</translation>
    </message>
    <message>
        <source>inside</source>
        <translation>innerhalb</translation>
    </message>
    <message>
        <source>balanced</source>
        <translation>ausgewuchtet</translation>
    </message>
    <message>
        <source>cleaned</source>
        <translation>gereinigt</translation>
    </message>
    <message>
        <source>rebuilt</source>
        <translation>umgebaut</translation>
    </message>
    <message>
        <source>foundation</source>
        <translation>Fundament</translation>
    </message>
    <message>
        <source>bearings</source>
        <translation>Lager</translation>
    </message>
    <message>
        <source>coupling</source>
        <translation>Kupplung</translation>
    </message>
    <message>
        <source>rotor</source>
        <translation>Rotor</translation>
    </message>
    <message>
        <source>drive</source>
        <translation>Antrieb</translation>
    </message>
    <message>
        <source>liquid</source>
        <translation>Flüssigkeit</translation>
    </message>
    <message>
        <source>dust</source>
        <translation>Staub</translation>
    </message>
    <message>
        <source>moisture</source>
        <translation>Feuchte</translation>
    </message>
    <message>
        <source>scale</source>
        <translation>Vollaussteuerung</translation>
    </message>
    <message>
        <source>point</source>
        <translation>Messpunkt</translation>
    </message>
    <message>
        <source>points</source>
        <translation>Messpunkte</translation>
    </message>
    <message>
        <source>plane</source>
        <translation>Ebene</translation>
    </message>
    <message>
        <source>runs</source>
        <translation>Läufe</translation>
    </message>
    <message>
        <source>run</source>
        <translation>Lauf</translation>
    </message>
    <message>
        <source>job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>jobs</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>angle</source>
        <translation>Winkel</translation>
    </message>
    <message>
        <source>mass</source>
        <translation>Masse</translation>
    </message>
    <message>
        <source>radius</source>
        <translation>Radius</translation>
    </message>
    <message>
        <source>speed</source>
        <translation>Drehzahl</translation>
    </message>
    <message>
        <source>position</source>
        <translation>Stelle</translation>
    </message>
    <message>
        <source>first</source>
        <translation>zuerst</translation>
    </message>
    <message>
        <source>last</source>
        <translation>letzter</translation>
    </message>
    <message>
        <source>sleeve</source>
        <translation>Gleitlager</translation>
    </message>
    <message>
        <source>rolling</source>
        <translation>Wälzlager</translation>
    </message>
    <message>
        <source>vertical</source>
        <translation>senkrecht</translation>
    </message>
    <message>
        <source>horizontal</source>
        <translation>waagerecht</translation>
    </message>
    <message>
        <source>left</source>
        <translation>links</translation>
    </message>
    <message>
        <source>right</source>
        <translation>rechts</translation>
    </message>
    <message>
        <source>square</source>
        <translation>quadratisch</translation>
    </message>
    <message>
        <source>static</source>
        <translation>statisch</translation>
    </message>
    <message>
        <source>dynamic</source>
        <translation>dynamisch</translation>
    </message>
    <message>
        <source>unbalance</source>
        <translation>Unwucht</translation>
    </message>
    <message>
        <source>misalignment</source>
        <translation>Ausrichtfehler</translation>
    </message>
    <message>
        <source>looseness</source>
        <translation>Lockerheit</translation>
    </message>
    <message>
        <source>resonance</source>
        <translation>Resonanz</translation>
    </message>
    <message>
        <source>rub</source>
        <translation>Anstreifen</translation>
    </message>
    <message>
        <source>flow</source>
        <translation>Strömung</translation>
    </message>
    <message>
        <source>electrical</source>
        <translation>elektrisch</translation>
    </message>
    <message>
        <source>level</source>
        <translation>Pegel</translation>
    </message>
    <message>
        <source>velocity of sound</source>
        <translation>Schallgeschwindigkeit</translation>
    </message>
    <message>
        <source>once per rev</source>
        <translation>1. Ordnung</translation>
    </message>
    <message>
        <source>per rev</source>
        <translation>je Umdrehung</translation>
    </message>
    <message>
        <source>Limit table</source>
        <translation>Grenzwerttabelle</translation>
    </message>
    <message>
        <source>any direction</source>
        <translation>beliebige Richtung</translation>
    </message>
    <message>
        <source>agreed in the brief</source>
        <translation>in der Aufgabe vereinbart</translation>
    </message>
    <message>
        <source>the job's</source>
        <translation>der des Auftrags</translation>
    </message>
    <message>
        <source>The static part first</source>
        <translation>Zuerst der statische Anteil</translation>
    </message>
    <message>
        <source>with</source>
        <translation>mit</translation>
    </message>
    <message>
        <source>against</source>
        <translation>gegen</translation>
    </message>
    <message>
        <source>pulse sensor and mark</source>
        <translation>Impulssensor und Marke</translation>
    </message>
    <message>
        <source>the brief does not say</source>
        <translation>die Aufgabe sagt es nicht</translation>
    </message>
    <message>
        <source>Edit {0}</source>
        <translation>{0} ändern</translation>
    </message>
    <message>
        <source>Close {0}</source>
        <translation>{0} schließen</translation>
    </message>
    <message>
        <source>{0} any angle</source>
        <translation>{0}, beliebiger Winkel</translation>
    </message>
    <message>
        <source>limit {0}</source>
        <translation>Grenzwert {0}</translation>
    </message>
    <message>
        <source>which tells {0} from {1}</source>
        <translation>das unterscheidet „{0}“ von „{1}“</translation>
    </message>
    <message>
        <source>it is to run at {0}</source>
        <translation>er soll mit {0} laufen</translation>
    </message>
    <message>
        <source>1 job</source>
        <translation>1 Auftrag</translation>
    </message>
    <message>
        <source>{0} job</source>
        <translation>{0} Auftrag</translation>
    </message>
    <message>
        <source>{0} jobs</source>
        <translation>{0} Aufträge</translation>
    </message>
    <message>
        <source>{0} edge · {1} · at {2}</source>
        <translation>{0} Flanke · {1} · bei {2}</translation>
    </message>
    <message>
        <source>rising edge · {0} · at {1}</source>
        <translation>steigende Flanke · {0} · bei {1}</translation>
    </message>
    <message>
        <source>falling edge · {0} · at {1}</source>
        <translation>fallende Flanke · {0} · bei {1}</translation>
    </message>
    <message>
        <source>{0} · at {1}</source>
        <translation>{0} · bei {1}</translation>
    </message>
    <message>
        <source>Influence coefficients at {0}</source>
        <translation>Einflusskoeffizienten bei {0}</translation>
    </message>
    <message>
        <source>damping ratio {0}</source>
        <translation>Dämpfungsgrad {0}</translation>
    </message>
    <message>
        <source>Repeatability {0} % {1} deg is assumed</source>
        <translation>Wiederholbarkeit {0} % {1} Grad angenommen</translation>
    </message>
    <message>
        <source>Placement {0} % {1} deg is assumed</source>
        <translation>Platzierung {0} % {1} Grad angenommen</translation>
    </message>
    <message>
        <source>what it will do</source>
        <translation>was sie bewirken wird</translation>
    </message>
    <message>
        <source>An interval without end</source>
        <translation>Ein Bereich ohne Ende</translation>
    </message>
    <message>
        <source>Wait until settled</source>
        <translation>Einlaufen abwarten</translation>
    </message>
    <message>
        <source>End the wait</source>
        <translation>Warten beenden</translation>
    </message>
    <message>
        <source>A neighbour close in speed</source>
        <translation>Ein Nachbar mit naher Drehzahl</translation>
    </message>
    <message>
        <source>Equivalent residual unbalance from 1x</source>
        <translation>Gleichwertige Restunwucht aus 1x</translation>
    </message>
    <message>
        <source>Heavy spot unknown</source>
        <translation>Schwere Stelle unbekannt</translation>
    </message>
    <message>
        <source>Judged by run "{0}"</source>
        <translation>Beurteilt nach Lauf „{0}“</translation>
    </message>
    <message>
        <source>Put half the correction on the face</source>
        <translation>Den halben Ausgleich auf die Ansicht setzen</translation>
    </message>
    <message>
        <source>Stop {0}</source>
        <translation>{0} anhalten</translation>
    </message>
    <message>
        <source>nothing is lost</source>
        <translation>nichts geht verloren</translation>
    </message>
    <message>
        <source>a phase that walks</source>
        <translation>eine Phase, die wandert</translation>
    </message>
    <message>
        <source>and not noted as weighed back in</source>
        <translation>und nicht als zurückgewogen notiert</translation>
    </message>
    <message>
        <source>it tests the stored coefficients</source>
        <translation>er prüft die gespeicherten Koeffizienten</translation>
    </message>
    <message>
        <source>record when 1x has settled</source>
        <translation>aufnehmen, wenn 1x eingelaufen ist</translation>
    </message>
    <message>
        <source>point {0}</source>
        <translation>Messpunkt {0}</translation>
    </message>
    <message>
        <source>with the reason</source>
        <translation>mit dem Grund</translation>
    </message>
    <message>
        <source>balancing procedures and tolerances for rotors with rigid behaviour</source>
        <translation>Verfahren und Toleranzen für Rotoren mit starrem Verhalten</translation>
    </message>
    <message>
        <source>&amp;Wait until settled</source>
        <translation>Einlaufen abwarten (&amp;J)</translation>
    </message>
    <message>
        <source>End the &amp;wait</source>
        <translation>Warten beenden (&amp;J)</translation>
    </message>
    <message>
        <source>the vector is as small as its scatter: its mean is known to {0} % only; record {1} s for 10 %</source>
        <translation>der Zeiger ist so klein wie seine Streuung: sein Mittel ist nur auf {0} % bekannt; {1} s aufnehmen für 10 %</translation>
    </message>
    <message>
        <source>no pulses: check the pulse sensor</source>
        <translation>keine Impulse: Impulssensor prüfen</translation>
    </message>
    <message>
        <source>as the job stands: {0}</source>
        <translation>nach Stand: {0}</translation>
    </message>
    <message>
        <source>{0} times</source>
        <translation>das {0}-Fache</translation>
    </message>
    <message>
        <source>a static part</source>
        <translation>ein statischer Anteil</translation>
    </message>
    <message>
        <source>a couple part</source>
        <translation>ein Momentenanteil</translation>
    </message>
    <message>
        <source>the runs tell {0}: its effect is {1} standard deviations, {2} are needed</source>
        <translation>die Läufe zeigen {0}: Wirkung {1} Standardabweichungen, nötig sind {2}</translation>
    </message>
    <message>
        <source>the runs do not tell {0}: its effect is {1} standard deviations, {2} are needed</source>
        <translation>die Läufe zeigen nicht {0}: Wirkung {1} Standardabweichungen, nötig sind {2}</translation>
    </message>
    <message>
        <source>{0}: {1} must be {2} or more</source>
        <translation>{0}: {1} muss {2} oder mehr sein</translation>
    </message>
    <message>
        <source>"{0}" is no quantity of the rules; known are {1}</source>
        <translation>„{0}“ ist keine Größe der Regeln; bekannt sind {1}</translation>
    </message>
    <message>
        <source>line {0}</source>
        <translation>Zeile {0}</translation>
    </message>
    <message>
        <source>the drive end</source>
        <translation>Antriebsseite</translation>
    </message>
    <message>
        <source>the non-drive end</source>
        <translation>Gegenseite</translation>
    </message>
    <message>
        <source>{0} g off</source>
        <translation>{0} g ab</translation>
    </message>
    <message>
        <source>mechanics</source>
        <translation>Mechanik</translation>
    </message>
    <message>
        <source>{0} within</source>
        <translation>{0} innerhalb</translation>
    </message>
    <message>
        <source>repeatability</source>
        <translation>Wiederholbarkeit</translation>
    </message>
    <message>
        <source>placement</source>
        <translation>Platzierung</translation>
    </message>
    <message>
        <source>repeatability {0} % {1} deg is assumed: the file does not say</source>
        <translation>Wiederholbarkeit {0} % {1} Grad angenommen: die Datei sagt es nicht</translation>
    </message>
    <message>
        <source>placement {0} % {1} deg is assumed: the file does not say</source>
        <translation>Platzierung {0} % {1} Grad angenommen: die Datei sagt es nicht</translation>
    </message>
    <message>
        <source>{0} per g</source>
        <translation>{0} je g</translation>
    </message>
    <message>
        <source>mark</source>
        <translation>Marke</translation>
    </message>
    <message>
        <source>rotation</source>
        <translation>Drehsinn</translation>
    </message>
    <message>
        <source>the end opposite the drive end</source>
        <translation>Ende gegenüber der Antriebsseite</translation>
    </message>
    <message>
        <source>{0}: is gone: was the disk or stick removed?</source>
        <translation>{0}: ist weg: wurde der Datenträger oder Stick entfernt?</translation>
    </message>
    <message>
        <source>nothing was added</source>
        <translation>nichts wurde hinzugefügt</translation>
    </message>
    <message>
        <source>close the job and open it again</source>
        <translation>den Auftrag schließen und neu öffnen</translation>
    </message>
    <message>
        <source>{0} or {1}</source>
        <translation>{0} oder {1}</translation>
    </message>
    <message>
        <source>{0} and {1}</source>
        <translation>{0} und {1}</translation>
    </message>
    <message>
        <source>is a directory</source>
        <translation>ist ein Ordner</translation>
    </message>
    <message>
        <source>not a directory</source>
        <translation>kein Ordner</translation>
    </message>
    <message>
        <source>file exists</source>
        <translation>die Datei gibt es schon</translation>
    </message>
    <message>
        <source>file name too long</source>
        <translation>Dateiname zu lang</translation>
    </message>
    <message>
        <source>permission denied</source>
        <translation>keine Berechtigung</translation>
    </message>
    <message>
        <source>no such file or directory</source>
        <translation>Datei oder Ordner gibt es nicht</translation>
    </message>
    <message>
        <source>input/output error</source>
        <translation>Ein-/Ausgabefehler</translation>
    </message>
    <message>
        <source>too many levels of symbolic links</source>
        <translation>zu viele Verknüpfungen hintereinander</translation>
    </message>
    <message>
        <source>started</source>
        <translation>begonnen</translation>
    </message>
    <message>
        <source>hookup</source>
        <translation>Anschluss</translation>
    </message>
    <message>
        <source>photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>measured</source>
        <translation>gemessen</translation>
    </message>
    <message>
        <source>plan</source>
        <translation>Plan</translation>
    </message>
    <message>
        <source>caution</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <source>reference</source>
        <translation>Bezug</translation>
    </message>
    <message>
        <source>alarm</source>
        <translation>Alarm</translation>
    </message>
    <message>
        <source>verdict</source>
        <translation>Ergebnis</translation>
    </message>
    <message>
        <source>reopened</source>
        <translation>wieder geöffnet</translation>
    </message>
    <message>
        <source>use</source>
        <translation>Nutzung</translation>
    </message>
    <message>
        <source>withdrawn</source>
        <translation>zurückgezogen</translation>
    </message>
    <message>
        <source>{0} was not noted in both runs</source>
        <translation>{0} wurde nicht in beiden Läufen notiert</translation>
    </message>
    <message>
        <source>is not valid TOML</source>
        <translation>ist kein gültiges TOML</translation>
    </message>
    <message>
        <source>Invalid value</source>
        <translation>ungültiger Wert</translation>
    </message>
    <message>
        <source>at line {0}, column {1}</source>
        <translation>Zeile {0}, Spalte {1}</translation>
    </message>
    <message>
        <source>at end of document</source>
        <translation>am Ende der Datei</translation>
    </message>
    <message>
        <source>run "{0}".vectors."{1}".{2}</source>
        <translation>Lauf „{0}“, Zeiger „{1}“, {2}</translation>
    </message>
    <message>
        <source>run "{0}".masses."{1}".{2}</source>
        <translation>Lauf „{0}“, Masse in „{1}“, {2}</translation>
    </message>
    <message>
        <source>run "{0}".{1}</source>
        <translation>Lauf „{0}“, {1}</translation>
    </message>
    <message>
        <source>run {0} ("{1}").{2}</source>
        <translation>Lauf {0} („{1}“), {2}</translation>
    </message>
    <message>
        <source>plane "{0}".{1}</source>
        <translation>Ebene „{0}“, {1}</translation>
    </message>
    <message>
        <source>point "{0}".{1}</source>
        <translation>Messpunkt „{0}“, {1}</translation>
    </message>
    <message>
        <source>unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>purpose</source>
        <translation>Zweck</translation>
    </message>
    <message>
        <source>recording</source>
        <translation>Aufnahme</translation>
    </message>
    <message>
        <source>density</source>
        <translation>Dichte</translation>
    </message>
    <message>
        <source>area</source>
        <translation>Fläche</translation>
    </message>
    <message>
        <source>new radius</source>
        <translation>neuer Radius</translation>
    </message>
    <message>
        <source>both parts</source>
        <translation>beide Anteile</translation>
    </message>
    <message>
        <source>broadband</source>
        <translation>Summenpegel</translation>
    </message>
    <message>
        <source>no space left on device</source>
        <translation>kein Platz auf dem Datenträger</translation>
    </message>
    <message>
        <source>lacks {0}</source>
        <translation>fehlt: {0}</translation>
    </message>
    <message>
        <source>threshold</source>
        <translation>Schwelle</translation>
    </message>
    <message>
        <source>{0}: "{1}": "{2}" is not a unit of {3}</source>
        <translation>{0}: „{1}“: „{2}“ ist keine Einheit für {3}</translation>
    </message>
    <message>
        <source>rotor mass {0}: must be above {1} and below {2}</source>
        <translation>Rotormasse {0}: muss größer als {1} und kleiner als {2} sein</translation>
    </message>
    <message>
        <source>background</source>
        <translation>Hintergrund</translation>
    </message>
    <message>
        <source>plane "{0}": there is none; the brief has {1}</source>
        <translation>Ebene „{0}“: gibt es nicht; die Aufgabe hat {1}</translation>
    </message>
    <message>
        <source>plane "{0}": there is none; the brief has no plane yet: add one</source>
        <translation>Ebene „{0}“: gibt es nicht; die Aufgabe hat noch keine Ebene: eine hinzufügen</translation>
    </message>
    <message>
        <source>a point</source>
        <translation>ein Messpunkt</translation>
    </message>
    <message>
        <source>seen from: drive · turns {0} · angles {1}</source>
        <translation>gesehen von: Antriebsseite · dreht {0} · Winkel {1}</translation>
    </message>
    <message>
        <source>seen from: opposite drive · turns {0} · angles {1}</source>
        <translation>gesehen von: Gegenseite · dreht {0} · Winkel {1}</translation>
    </message>
    <message>
        <source>opposite {0}</source>
        <translation>gegenüber {0}</translation>
    </message>
    <message>
        <source>{0} to {1}</source>
        <translation>{0} bis {1}</translation>
    </message>
    <message>
        <source>unsettled</source>
        <translation>unruhig</translation>
    </message>
    <message>
        <source>1x {0} is beating</source>
        <translation>1x {0} schwebt</translation>
    </message>
    <message>
        <source>1x {0} is walking</source>
        <translation>1x {0} wandert</translation>
    </message>
    <message>
        <source>1x {0} is drifting</source>
        <translation>1x {0} driftet</translation>
    </message>
    <message>
        <source>1x {0} is unsettled</source>
        <translation>1x {0} ist unruhig</translation>
    </message>
    <message>
        <source>a second source at {0} r/min, {1} times as strong, or a strong tone far from the speed that looks like it (see the spectrum), {2}</source>
        <translation>eine zweite Quelle bei {0} r/min, {1}-mal so stark, oder ein starker Ton fern der Drehzahl, der so aussieht (siehe Spektrum), {2}</translation>
    </message>
    <message>
        <source>{0} r/min, rising edge, mark {1}° wide{2}</source>
        <translation>{0} r/min, steigende Flanke, Marke {1}° breit{2}</translation>
    </message>
    <message>
        <source>{0} r/min, falling edge, mark {1}° wide{2}</source>
        <translation>{0} r/min, fallende Flanke, Marke {1}° breit{2}</translation>
    </message>
    <message>
        <source>{0} The rising edge of the pulse is kept for all runs.</source>
        <translation>{0} Die steigende Flanke des Impulses gilt für alle Läufe.</translation>
    </message>
    <message>
        <source>{0} The falling edge of the pulse is kept for all runs.</source>
        <translation>{0} Die fallende Flanke des Impulses gilt für alle Läufe.</translation>
    </message>
    <message>
        <source>auto edge · {0} · at {1}</source>
        <translation>Flanke selbsttätig · {0} · bei {1}</translation>
    </message>
    <message>
        <source>{0} s to go</source>
        <translation>noch {0} s</translation>
    </message>
    <message>
        <source>Begin the next visit</source>
        <translation>Nächsten Einsatz beginnen</translation>
    </message>
    <message>
        <source>Go to Close-out</source>
        <translation>Zum Abschluss</translation>
    </message>
    <message>
        <source>{0} at any angle</source>
        <translation>{0} bei beliebigem Winkel</translation>
    </message>
    <message>
        <source>Press, then run up, or switch off and let it coast down.</source>
        <translation>Drücken, dann hochfahren, oder abschalten und auslaufen lassen.</translation>
    </message>
    <message>
        <source>The job is closed: reopen it on Close-out; no run is taken.</source>
        <translation>Der Auftrag ist abgeschlossen: unter Abschluss wieder öffnen; kein Lauf wird aufgenommen.</translation>
    </message>
    <message>
        <source>The job can only be read; no run is taken.</source>
        <translation>Der Auftrag ist nur zum Lesen offen; kein Lauf wird aufgenommen.</translation>
    </message>
    <message>
        <source>{0}, probability within: {1}</source>
        <translation>{0}, Wahrscheinlichkeit innerhalb: {1}</translation>
    </message>
    <message>
        <source>"{0}": write amplitude and unit, such as "18 mm/s rms"</source>
        <translation>„{0}“: Amplitude und Einheit schreiben, z. B. „18 mm/s rms“</translation>
    </message>
    <message>
        <source>"{0}": write mass x count, such as "5 g x 10, 10 g x 4"</source>
        <translation>„{0}“: Masse x Anzahl schreiben, z. B. „5 g x 10, 10 g x 4“</translation>
    </message>
    <message>
        <source>"{0}" is {1} Hz; mains have 50 Hz or 60 Hz, railways 16.7 Hz</source>
        <translation>„{0}“ sind {1} Hz; Netze haben 50 Hz oder 60 Hz, Bahnen 16,7 Hz</translation>
    </message>
    <message>
        <source>Measured {0} by {1}</source>
        <translation>Gemessen {0} von {1}</translation>
    </message>
    <message>
        <source>Hide figures</source>
        <translation>Zahlen ausblenden</translation>
    </message>
    <message>
        <source>Show figures</source>
        <translation>Zahlen zeigen</translation>
    </message>
    <message>
        <source>Hide figures of {0}</source>
        <translation>Zahlen zu {0} ausblenden</translation>
    </message>
    <message>
        <source>Show figures of {0}</source>
        <translation>Zahlen zu {0} zeigen</translation>
    </message>
    <message>
        <source>Strongly for: {0}</source>
        <translation>Spricht stark dafür: {0}</translation>
    </message>
    <message>
        <source>Strongly against: {0}</source>
        <translation>Spricht stark dagegen: {0}</translation>
    </message>
    <message>
        <source>For: {0}</source>
        <translation>Spricht dafür: {0}</translation>
    </message>
    <message>
        <source>Against: {0}</source>
        <translation>Spricht dagegen: {0}</translation>
    </message>
    <message>
        <source>Back to the page</source>
        <translation>Zurück zur Seite</translation>
    </message>
    <message>
        <source>running {0}</source>
        <translation>Betrieb {0}</translation>
    </message>
    <message>
        <source>resonance {0}</source>
        <translation>Resonanz {0}</translation>
    </message>
    <message>
        <source>coast-down</source>
        <translation>Auslauf</translation>
    </message>
    <message>
        <source>run-up</source>
        <translation>Hochlauf</translation>
    </message>
    <message>
        <source>, which tells {0} from {1}</source>
        <translation>, das unterscheidet „{0}“ von „{1}“</translation>
    </message>
    <message>
        <source>likely: {0}</source>
        <translation>wahrscheinlich: {0}</translation>
    </message>
    <message>
        <source>likely: {0}; {1}</source>
        <translation>wahrscheinlich: {0}; {1}</translation>
    </message>
    <message>
        <source>Change {0}</source>
        <translation>Änderung {0}</translation>
    </message>
    <message>
        <source>Run "{0}" counts</source>
        <translation>Lauf „{0}“ zählt</translation>
    </message>
    <message>
        <source>Run "{0}" counts. {1}</source>
        <translation>Lauf „{0}“ zählt. {1}</translation>
    </message>
    <message>
        <source>put on {0} at {1} on "{2}"</source>
        <translation>{0} bei {1} in „{2}“ anbringen</translation>
    </message>
    <message>
        <source>put on {0}</source>
        <translation>anbringen: {0}</translation>
    </message>
    <message>
        <source>No verdict was recorded</source>
        <translation>Es wurde kein Ergebnis protokolliert</translation>
    </message>
    <message>
        <source>There is no run after balancing to hold against the first</source>
        <translation>Es gibt keinen Lauf nach dem Auswuchten, der sich mit dem ersten vergleichen ließe</translation>
    </message>
    <message>
        <source>Once-per-rev vibration changed by {0} at the point that gained least, {1}</source>
        <translation>Die Schwingung der 1. Ordnung änderte sich um {0} am Messpunkt, der am wenigsten gewann: {1}</translation>
    </message>
    <message>
        <source>{0} pages</source>
        <translation>{0} Seiten</translation>
    </message>
    <message>
        <source>put on, in the place of all that is on, {0}</source>
        <translation>statt allem, was sitzt, anbringen: {0}</translation>
    </message>
    <message>
        <source>add to what is on {0}</source>
        <translation>zu dem hinzufügen, was sitzt: {0}</translation>
    </message>
    <message>
        <source>{0}: 1x holds {1} % of the mean square</source>
        <translation>{0}: 1x trägt {1} % des mittleren Quadrats</translation>
    </message>
    <message>
        <source>{0}: 1x holds {1} % of the mean square; {2}</source>
        <translation>{0}: 1x trägt {1} % des mittleren Quadrats; {2}</translation>
    </message>
    <message>
        <source>Vibration in {0}: {1}</source>
        <translation>Schwingung in {0}: {1}</translation>
    </message>
    <message>
        <source>Above the limit: yes; {0}</source>
        <translation>Über dem Grenzwert: ja; {0}</translation>
    </message>
    <message>
        <source>Above the limit: no; {0}</source>
        <translation>Über dem Grenzwert: nein; {0}</translation>
    </message>
    <message>
        <source>{0}, entry {1}.</source>
        <translation>{0}, Eintrag {1}.</translation>
    </message>
    <message>
        <source>recording {0}</source>
        <translation>Aufnahme {0}</translation>
    </message>
    <message>
        <source>steel</source>
        <translation>Stahl</translation>
    </message>
    <message>
        <source>aluminium</source>
        <translation>Aluminium</translation>
    </message>
    <message>
        <source>brass</source>
        <translation>Messing</translation>
    </message>
    <message>
        <source>bronze</source>
        <translation>Bronze</translation>
    </message>
    <message>
        <source>copper</source>
        <translation>Kupfer</translation>
    </message>
    <message>
        <source>lead</source>
        <translation>Blei</translation>
    </message>
    <message>
        <source>tungsten</source>
        <translation>Wolfram</translation>
    </message>
    <message>
        <source>titanium</source>
        <translation>Titan</translation>
    </message>
    <message>
        <source>magnesium</source>
        <translation>Magnesium</translation>
    </message>
    <message>
        <source>zinc</source>
        <translation>Zink</translation>
    </message>
    <message>
        <source>{0}: full scale {1} becomes {2}</source>
        <translation>{0}: aus Vollaussteuerung {1} wird {2}</translation>
    </message>
    <message>
        <source>{0}: AC-coupling corners none becomes {1}</source>
        <translation>{0}: Eckfrequenzen der AC-Kopplung, bisher keine: {1}</translation>
    </message>
    <message>
        <source>{0}: AC-coupling corners {1} becomes {2}</source>
        <translation>{0}: Eckfrequenzen der AC-Kopplung, bisher {1}, jetzt {2}</translation>
    </message>
    <message>
        <source>Other job…</source>
        <translation>Aufträge…</translation>
    </message>
    <message>
        <source>{0} · {1} g off at {2}</source>
        <translation>{0} · {1} g ab bei {2}</translation>
    </message>
    <message>
        <source>{0} · {1} g off at {2}, {3}</source>
        <translation>{0} · {1} g ab bei {2}, {3}</translation>
    </message>
    <message>
        <source>Thought of {0}: {1}</source>
        <translation>Geplant {0}: {1}</translation>
    </message>
    <message>
        <source>On the rotor {0}: {1}</source>
        <translation>Auf dem Rotor {0}: {1}</translation>
    </message>
    <message>
        <source>at {0} r/min there is no trial run with a mass on plane "{1}"; take one</source>
        <translation>bei {0} r/min gibt es keinen Testlauf mit einer Masse in Ebene „{1}“; einen machen</translation>
    </message>
    <message>
        <source>{0}: at {1} r/min there is no trial run with a mass on plane "{2}"; take one</source>
        <translation>{0}: bei {1} r/min gibt es keinen Testlauf mit einer Masse in Ebene „{2}“; einen machen</translation>
    </message>
    <message>
        <source>{0} (Ctrl+{1})</source>
        <translation>{0} (Strg+{1})</translation>
    </message>
    <message>
        <source>plane "{0}": pieces at any angle, the brief does not say positions</source>
        <translation>Ebene „{0}“: Stücke unter beliebigem Winkel, die Aufgabe nennt keine Stellen</translation>
    </message>
    <message>
        <source>{0}, {1}, first → last run of each job: {2}</source>
        <translation>{0}, {1}, erster → letzter Lauf jedes Auftrags: {2}</translation>
    </message>
    <message>
        <source>Thought of {0}: {1} g off at {2}</source>
        <translation>Geplant {0}: {1} g ab bei {2}</translation>
    </message>
    <message>
        <source>Thought of {0}: {1} g off at {2}, {3}</source>
        <translation>Geplant {0}: {1} g ab bei {2}, {3}</translation>
    </message>
    <message>
        <source>{0} left</source>
        <translation>noch {0}</translation>
    </message>
    <message>
        <source>flexible.frequency: "{0}": {1} to {2} Hz</source>
        <translation>flexible.frequency: „{0}“: {1} bis {2} Hz</translation>
    </message>
    <message>
        <source>The source is waited for: it goes on by itself once it is back.</source>
        <translation>Auf die Quelle wird gewartet: Es geht von selbst weiter, sobald sie wieder da ist.</translation>
    </message>
    <message>
        <source>cold</source>
        <translation>kalt</translation>
    </message>
    <message>
        <source>warm</source>
        <translation>warm</translation>
    </message>
    <message>
        <source>hot</source>
        <translation>heiß</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/app.py"/>
        <source>Folder of a job</source>
        <translation>Ordner eines Auftrags</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/app.py"/>
        <source>{0} - Stillshaft</source>
        <translation>{0} - Stillshaft</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/app.py"/>
        <source>recent jobs</source>
        <translation>letzte Aufträge</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>damper or vane</source>
        <translation>Klappe oder Leitschaufel</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>motor current</source>
        <translation>Motorstrom</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>bearing temperature</source>
        <translation>Lagertemperatur</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>process temperature</source>
        <translation>Prozesstemperatur</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>minutes since start</source>
        <translation>Minuten seit dem Start</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Radius</source>
        <translation>Radius</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>such as 310 mm</source>
        <translation>z. B. 310 mm</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>From first bearing</source>
        <translation>Ab dem ersten Lager</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>such as -250 mm</source>
        <translation>z. B. -250 mm</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Blades or holes</source>
        <translation>Schaufeln oder Löcher</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>number, or angles</source>
        <translation>Anzahl oder Winkel</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Blocked numbers</source>
        <translation>Gesperrte Nummern</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>such as 3, 7</source>
        <translation>z. B. 3, 7</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Most at one place</source>
        <translation>Höchstens je Stelle</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>such as 20 g</source>
        <translation>z. B. 20 g</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Pieces at one place</source>
        <translation>Stücke je Stelle</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>such as 1</source>
        <translation>z. B. 1</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Most on the plane</source>
        <translation>Höchstens in der Ebene</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>such as 60 g</source>
        <translation>z. B. 60 g</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Other radii</source>
        <translation>Andere Radien</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Plane</source>
        <translation>Ebene</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>{0}, plane {1}</source>
        <translation>{0}, Ebene {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Name of plane {0}</source>
        <translation>Name der Ebene {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Remove plane {0}</source>
        <translation>Ebene {0} entfernen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Mass may go anywhere on the rim.</source>
        <translation>Masse darf überall auf den Umfang.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>{0} places; number 1 at or first after the mark, counted against rotation.</source>
        <translation>{0} Stellen; Nummer 1 an der Marke oder als erste danach, gezählt gegen den Drehsinn.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Planes that take mass</source>
        <translation>Ausgleichsebenen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>No plane yet. An overhung disc is one plane at first.</source>
        <translation>Noch keine Ebene. Eine fliegende Scheibe ist zunächst eine Ebene.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>New plane</source>
        <translation>Neue Ebene</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>disc, drive side, …</source>
        <translation>Scheibe, Antriebsseite, …</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Add &amp;plane</source>
        <translation>Eb&amp;ene hinzufügen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>masses were put on "{0}": it keeps its name and its place</source>
        <translation>in „{0}“ sitzen schon Massen: Name und Lage bleiben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Stop the machine at</source>
        <translation>Maschine abstellen bei</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>such as 25 mm/s rms</source>
        <translation>z. B. 25 mm/s rms</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Agreed with</source>
        <translation>Vereinbart mit</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>name of the owner</source>
        <translation>Name des Betreibers</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Limit</source>
        <translation>Grenzwert</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>such as 4.5 mm/s rms</source>
        <translation>z. B. 4.5 mm/s rms</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Limit set by</source>
        <translation>Grenzwert aus</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>contract, standard, …</source>
        <translation>Vertrag, Norm, …</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Abort levels and limits by point</source>
        <translation>Abschaltpegel und Grenzwerte je Messpunkt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>The abort level is agreed with the owner; it is not the alarm limit. Crossing it calls for a stop at once.</source>
        <translation>Der Abschaltpegel wird mit dem Betreiber vereinbart; er ist nicht der Alarmwert. Wird er überschritten, ist sofort abzustellen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Points come with the hook-up: set it there first.</source>
        <translation>Messpunkte kommen mit dem Anschluss: erst dort festlegen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Conditions to keep alike in all runs</source>
        <translation>In allen Läufen gleich zu halten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Condition: {0}</source>
        <translation>Bedingung: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Another condition</source>
        <translation>Weitere Bedingung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>humidity, fuel, …</source>
        <translation>Feuchte, Brennstoff, …</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Noted in each run. A run outside its tolerance is not held against the others; without a tolerance the same words must stand there.</source>
        <translation>Wird bei jedem Lauf notiert. Ein Lauf außerhalb der Toleranz wird nicht mit den anderen verglichen; ohne Toleranz muss der Wortlaut gleich sein.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>such as 5 %</source>
        <translation>z. B. 5 %</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>What runs beside it</source>
        <translation>Was daneben läuft</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Another machine</source>
        <translation>Weitere Maschine</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>such as pump = 1465 r/min within 5</source>
        <translation>z. B. pump = 1465 r/min within 5</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Looked for in the spectrum at its speed. Without a tolerance it is known as well as a nameplate tells it. An empty speed takes it out.</source>
        <translation>Wird im Spektrum bei ihrer Drehzahl gesucht. Ohne Toleranz gilt sie so genau, wie es ein Typenschild sagt. Eine leere Drehzahl nimmt sie heraus.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>such as 1465 r/min within 5</source>
        <translation>z. B. 1465 r/min within 5</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>Speed, {0}</source>
        <translation>Drehzahl, {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>The hook-up has no such point: this level can never call for a stop. Move it to a point that is there.</source>
        <translation>Im Anschluss gibt es diesen Messpunkt nicht: Dieser Pegel kann nie zum Abschalten auffordern. Ihn auf einen vorhandenen Messpunkt legen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>The hook-up has no such point: nothing here is held against this limit.</source>
        <translation>Im Anschluss gibt es diesen Messpunkt nicht: Gegen diesen Grenzwert wird nichts gehalten.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_cards.py"/>
        <source>such as 290 mm</source>
        <translation>z. B. 290 mm</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>such as {0}</source>
        <translation>z. B. {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>the name its jobs go by</source>
        <translation>Name in ihren Aufträgen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Kind of machine</source>
        <translation>Art der Maschine</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>fan, pump, motor, …</source>
        <translation>Ventilator, Pumpe, Motor, …</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Where it stands</source>
        <translation>Standort</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>hall, floor, bay</source>
        <translation>Halle, Ebene, Feld</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Owner</source>
        <translation>Betreiber</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>who decides about it</source>
        <translation>wer darüber entscheidet</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Maker</source>
        <translation>Hersteller</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>on its plate</source>
        <translation>auf dem Typenschild</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Serial number</source>
        <translation>Seriennummer</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Bearings</source>
        <translation>Lager</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>rolling, sleeve, …</source>
        <translation>Wälzlager, Gleitlager, …</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Power</source>
        <translation>Leistung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>such as 45 kW</source>
        <translation>z. B. 45 kW</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>what else is worth knowing</source>
        <translation>was sonst zu wissen ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Rotor</source>
        <translation>Rotor</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Mass</source>
        <translation>Masse</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Balanced at</source>
        <translation>Ausgewuchtet bei</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Never above</source>
        <translation>Nie über</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Between bearings</source>
        <translation>Zwischen den Lagern</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Centre of mass from first bearing</source>
        <translation>Schwerpunkt ab dem ersten Lager</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>material, repairs, old balance masses</source>
        <translation>Werkstoff, Reparaturen, alte Ausgleichsmassen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Driven by</source>
        <translation>Angetrieben durch</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Motor runs at</source>
        <translation>Motordrehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Motor's pulley</source>
        <translation>Motorscheibe</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Rotor's pulley</source>
        <translation>Rotorscheibe</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Belt length</source>
        <translation>Riemenlänge</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Variable-speed drive</source>
        <translation>Frequenzumrichter</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>coupling, number of belts, pulleys in line</source>
        <translation>Kupplung, Zahl der Riemen, Scheiben fluchten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Horizontally</source>
        <translation>Waagerecht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Vertically</source>
        <translation>Senkrecht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Along the shaft</source>
        <translation>Axial</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>springs, frame, floor</source>
        <translation>Federn, Rahmen, Boden</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Starts allowed in all</source>
        <translation>Starts erlaubt, gesamt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>From cold, in a row</source>
        <translation>Kalt, nacheinander</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>From hot, in a row</source>
        <translation>Warm, nacheinander</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Minutes between two</source>
        <translation>Minuten dazwischen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Minutes to coast down</source>
        <translation>Minuten Auslauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Minutes to lock out</source>
        <translation>Minuten zum Freischalten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Work must end at</source>
        <translation>Arbeit endet spätestens</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Goal set by</source>
        <translation>Ziel gesetzt durch</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Balance grade</source>
        <translation>Gütestufe</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Limit table and class</source>
        <translation>Grenzwerttabelle und Klasse</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>In words</source>
        <translation>In Worten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>what the owner wants to see</source>
        <translation>was der Betreiber sehen will</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Mass x count</source>
        <translation>Masse x Anzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>What is wrong, and since when?</source>
        <translation>Was wird beanstandet, und seit wann?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>in the owner's words</source>
        <translation>mit den Worten des Betreibers</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>How did it begin?</source>
        <translation>Wie fing es an?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Why is unbalance suspected?</source>
        <translation>Warum wird Unwucht vermutet?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>mostly 1x, build-up broke off, …</source>
        <translation>vor allem 1x, Belag abgefallen, …</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>What was worked on last?</source>
        <translation>Woran wurde zuletzt gearbeitet?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>What was done, when, and by whom?</source>
        <translation>Was wurde gemacht, wann und von wem?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>What does the process bring the rotor?</source>
        <translation>Was bringt der Prozess auf den Rotor?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>What else does the process do?</source>
        <translation>Was bewirkt der Prozess noch?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>dust, moisture, 180 °C, …</source>
        <translation>Staub, Feuchte, 180 °C, …</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>How critical is the machine?</source>
        <translation>Wie wichtig ist die Maschine?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>no spare, the line stops, …</source>
        <translation>kein Ersatz, die Anlage steht, …</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>How much time is there?</source>
        <translation>Wie viel Zeit ist da?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>until Friday noon</source>
        <translation>bis Freitagmittag</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>the machine's name</source>
        <translation>den Namen der Maschine</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>the kind of rotor</source>
        <translation>die Art des Rotors</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>the rotor's mass</source>
        <translation>die Masse des Rotors</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>the speed it is balanced at</source>
        <translation>die Drehzahl zum Auswuchten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>the drive</source>
        <translation>den Antrieb</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>a plane that takes mass</source>
        <translation>eine Ebene für Massen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>the radius of each plane</source>
        <translation>den Radius jeder Ebene</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>what is wrong</source>
        <translation>was der Maschine fehlt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>a goal or limits</source>
        <translation>ein Ziel oder Grenzwerte</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Line frequency</source>
        <translation>Netzfrequenz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Poles of the motor</source>
        <translation>Polzahl des Motors</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Name of the machine</source>
        <translation>Name der Maschine</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Note on the machine</source>
        <translation>Notiz zur Maschine</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Note on the rotor</source>
        <translation>Notiz zum Rotor</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Note on the drive</source>
        <translation>Notiz zum Antrieb</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Note on the supports</source>
        <translation>Notiz zur Abstützung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Kind of rotor</source>
        <translation>Art des Rotors</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_entries.py"/>
        <source>Bearing span</source>
        <translation>Lagerabstand</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_fields.py"/>
        <source>not said</source>
        <translation>keine Angabe</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_fields.py"/>
        <source>Kept: {0}.</source>
        <translation>Es bleibt: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_fields.py"/>
        <source>Nothing is kept.</source>
        <translation>Nichts wurde behalten.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>Brief</source>
        <translation>Aufgabe</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>Take back the last entry of the record (Ctrl+Z)</source>
        <translation>Letzten Eintrag im Protokoll zurücknehmen (Strg+Z)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>&amp;Redo</source>
        <translation>Wie&amp;der</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>Put back what was undone (Ctrl+Shift+Z)</source>
        <translation>Zurückgenommenes wiederherstellen (Strg+Umschalt+Z)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>Other &amp;job…</source>
        <translation>Au&amp;fträge…</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>Begin or open another job</source>
        <translation>Anderen Auftrag anlegen oder öffnen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>photos of the machine</source>
        <translation>Fotos der Maschine</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>photo removed</source>
        <translation>Foto entfernt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>Goal</source>
        <translation>Ziel</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>Photos</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>Drive</source>
        <translation>Antrieb</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>Supports</source>
        <translation>Abstützung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>What is wrong</source>
        <translation>Beanstandung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>Starts and time</source>
        <translation>Starts und Zeit</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>Pieces at hand</source>
        <translation>Vorhandene Stücke</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>There is nothing to {0}.</source>
        <translation>Es gibt nichts: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>Back to the &amp;job</source>
        <translation>Zurück zum Au&amp;ftrag</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>No job is open: begin one, or open one.</source>
        <translation>Kein Auftrag ist offen: einen anlegen oder öffnen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>, to read only</source>
        <translation>, nur zum Lesen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>, closed</source>
        <translation>, abgeschlossen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>, and {0} more</source>
        <translation>, und {0} weitere</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>The brief does not say {0} yet{1}.</source>
        <translation>In der Aufgabe fehlt noch: {0}{1}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_photos.py"/>
        <source>Photo {0}</source>
        <translation>Foto {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_photos.py"/>
        <source>this computer cannot show its format</source>
        <translation>dieser Rechner kann sein Format nicht zeigen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_photos.py"/>
        <source>Photo {0}, large</source>
        <translation>Foto {0}, groß</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_photos.py"/>
        <source>Reading …</source>
        <translation>Wird gelesen …</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_photos.py"/>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_photos.py"/>
        <source>reading a photo</source>
        <translation>ein Foto wird gelesen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_photos.py"/>
        <source>this computer cannot show its format; the file is in the job's folder</source>
        <translation>dieser Rechner kann sein Format nicht zeigen; die Datei liegt im Ordner des Auftrags</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_photos.py"/>
        <source>Add photos…</source>
        <translation>Fotos hinzufügen…</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_photos.py"/>
        <source>Choose files, or drop them here</source>
        <translation>Dateien wählen oder hier ablegen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_photos.py"/>
        <source>Add photos, {0}</source>
        <translation>Fotos hinzufügen, {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_photos.py"/>
        <source>or drop files here</source>
        <translation>oder Dateien hier ablegen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_photos.py"/>
        <source>Remove photo {0}</source>
        <translation>Foto {0} entfernen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_photos.py"/>
        <source>Photos ({0});;All files (*)</source>
        <translation>Fotos ({0});;Alle Dateien (*)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_record.py"/>
        <source>in/s peak</source>
        <translation>in/s peak</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_record.py"/>
        <source>"{0}" is below 0</source>
        <translation>„{0}“ ist kleiner als 0</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_record.py"/>
        <source>a speed must be above 0</source>
        <translation>eine Drehzahl muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_record.py"/>
        <source>"{0}" is no date and time; write for example "2026-11-26 17:00"</source>
        <translation>„{0}“ ist kein Datum mit Uhrzeit; zum Beispiel „2026-11-26 17:00“ schreiben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_record.py"/>
        <source>give the level first</source>
        <translation>erst den Pegel angeben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_record.py"/>
        <source>"{0}" is no tolerance; write for example "5 %", or nothing for “the same words”</source>
        <translation>„{0}“ ist keine Toleranz; zum Beispiel „5 %“ schreiben, oder nichts für „gleicher Wortlaut“</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_record.py"/>
        <source>give it a name</source>
        <translation>einen Namen angeben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_record.py"/>
        <source>"{0}" is there already; give it another name</source>
        <translation>„{0}“ gibt es schon; anderen Namen wählen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_record.py"/>
        <source>write name and speed, such as "pump = 1465 r/min"</source>
        <translation>Name und Drehzahl schreiben, etwa „pump = 1465 r/min“</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>Job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>Stillshaft jobs</source>
        <translation>Stillshaft-Aufträge</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>Name of the new job</source>
        <translation>Name des neuen Auftrags</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>extraction fan 3, {0}</source>
        <translation>Saugzug 3, {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>Who works</source>
        <translation>Wer arbeitet</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>as the record shall say</source>
        <translation>so steht es im Protokoll</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>&amp;New job</source>
        <translation>&amp;Neuer Auftrag</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>Begin a job with this name</source>
        <translation>Auftrag mit diesem Namen anlegen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>New job</source>
        <translation>Neuer Auftrag</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>New job in…</source>
        <translation>Neuer Auftrag in…</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>Choose the folder that the job's folder goes into</source>
        <translation>Ordner wählen, in den der Ordner des Auftrags kommt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>&amp;Open job…</source>
        <translation>Auftrag ö&amp;ffnen…</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>Go on with a job</source>
        <translation>Mit einem Auftrag fortfahren</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>Everything is saved into the job's folder as you go.</source>
        <translation>Alles wird laufend im Ordner des Auftrags gesichert.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>New jobs go into {0}</source>
        <translation>Neue Aufträge kommen in {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>Give the new job a name first.</source>
        <translation>Erst dem neuen Auftrag einen Namen geben.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>Folder for new jobs</source>
        <translation>Ordner für neue Aufträge</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>New jobs go into {0}. Everything is saved into the job's folder as you go.</source>
        <translation>Neue Aufträge kommen in {0}. Alles wird laufend im Ordner des Auftrags gesichert.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>all points</source>
        <translation>alle Messpunkte</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>full scale</source>
        <translation>Vollaussteuerung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>AC-coupling corners</source>
        <translation>Eckfrequenzen der AC-Kopplung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>{0}: {1} {2} becomes {3}</source>
        <translation>{0}: aus {1} {2} wird {3}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>Calibration</source>
        <translation>Kalibrierung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>Calibrate by</source>
        <translation>Kalibrieren mit</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>Point</source>
        <translation>Messpunkt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>Voltage of the sine, rms</source>
        <translation>Spannung des Sinus, rms</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>such as 1 V</source>
        <translation>z. B. 1 V</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>Acceleration of the shaker, rms</source>
        <translation>Beschleunigung des Erregers, rms</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>such as 1 g</source>
        <translation>z. B. 1 g</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>Frequency of the shaker</source>
        <translation>Frequenz des Erregers</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>such as 159.2 Hz</source>
        <translation>z. B. 159.2 Hz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>Record for</source>
        <translation>Aufnehmen für</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>such as 8 s</source>
        <translation>z. B. 8 s</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>Record no&amp;w</source>
        <translation>J&amp;etzt aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>Record from the chosen source, and work it out</source>
        <translation>Von der gewählten Quelle aufnehmen und auswerten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>Fro&amp;m a recording…</source>
        <translation>Aus einer Aufnah&amp;me…</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>Work it out from a file</source>
        <translation>Aus einer Datei auswerten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>this calibration</source>
        <translation>diese Kalibrierung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>Write into the h&amp;ook-up</source>
        <translation>In den Anschl&amp;uss schreiben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>Keep these values in the hook-up, with today's date</source>
        <translation>Diese Werte mit dem heutigen Datum im Anschluss behalten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>Leave it as it was</source>
        <translation>Alles beim Alten lassen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>value: {0} must be above 0</source>
        <translation>Wert: {0} muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>value: {0}: record for {1} to {2} s</source>
        <translation>Wert: {0}: zwischen {1} und {2} s aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>say how many volts the sine has</source>
        <translation>angeben, wie viel Volt der Sinus hat</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_card.py"/>
        <source>± is the 95 % interval of this record alone. Nothing is written yet.</source>
        <translation>± ist der 95-%-Bereich dieser Aufnahme allein. Noch ist nichts geschrieben.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_work.py"/>
        <source>Known voltage</source>
        <translation>Bekannte Spannung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_work.py"/>
        <source>Put a sine of a known voltage on the input, instead of the sensor. It gives the full scale in volts.</source>
        <translation>Statt des Sensors einen Sinus bekannter Spannung auf den Eingang geben. Er liefert die Vollaussteuerung in Volt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_work.py"/>
        <source>Hand-held shaker</source>
        <translation>Handerreger</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_work.py"/>
        <source>Hold the accelerometer to the shaker until it runs evenly. It gives the sensitivity; points that do not see the tone are left out.</source>
        <translation>Den Beschleunigungssensor an den Erreger halten, bis er gleichmäßig läuft. Das liefert die Empfindlichkeit; Messpunkte ohne den Ton bleiben weg.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_work.py"/>
        <source>Split signal</source>
        <translation>Geteiltes Signal</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_work.py"/>
        <source>Feed one signal to the pulse input and to the inputs of the sensors at once, best with two tones or more. It gives the delay of each input against the pulse.</source>
        <translation>Ein Signal zugleich auf den Impulseingang und die Sensoreingänge geben, am besten mit zwei oder mehr Tönen. Es liefert den Verzug jedes Eingangs gegen den Impuls.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_work.py"/>
        <source>Step</source>
        <translation>Sprung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_work.py"/>
        <source>Switch a direct voltage onto the input once, a second or two after the recording begins, and leave it on. It gives the corners of AC coupling.</source>
        <translation>Eine Gleichspannung einmal auf den Eingang schalten, ein bis zwei Sekunden nach Beginn der Aufnahme, und anlassen. Das liefert die Eckfrequenzen der AC-Kopplung.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_work.py"/>
        <source>the simulated rotor has no known signal at its inputs: choose the input that is to be calibrated, or take a recording</source>
        <translation>der simulierte Rotor hat an seinen Eingängen kein bekanntes Signal: den zu kalibrierenden Eingang wählen oder eine Aufnahme nehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_work.py"/>
        <source>{0}: {1}; record again</source>
        <translation>{0}: {1}; neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_work.py"/>
        <source>the recording ended early</source>
        <translation>die Aufnahme endete zu früh</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/calibration_work.py"/>
        <source>working it out</source>
        <translation>wird ausgewertet</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/canvas.py"/>
        <source>nothing to show yet</source>
        <translation>noch nichts zu zeigen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>not asked</source>
        <translation>nicht gefragt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>mm and g</source>
        <translation>mm und g</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>inches and ounces</source>
        <translation>Zoll und Unzen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>PDF (*.pdf)</source>
        <translation>PDF (*.pdf)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Page (*.html)</source>
        <translation>Seite (*.html)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Table (*.csv)</source>
        <translation>Tabelle (*.csv)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Data (*.json)</source>
        <translation>Daten (*.json)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Closing the job</source>
        <translation>Auftrag abschließen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Not done yet</source>
        <translation>Noch offen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Record the verdict</source>
        <translation>Ergebnis protokollieren</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Write into the record where the job stands against its goal</source>
        <translation>Im Protokoll festhalten, wie der Auftrag zu seinem Ziel steht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>The owner</source>
        <translation>Der Betreiber</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>for the owner</source>
        <translation>für den Betreiber</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>basis, remarks, or why it is refused</source>
        <translation>Grundlage, Bemerkungen, oder warum abgelehnt wird</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>&amp;Name</source>
        <translation>&amp;Name</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Re&amp;marks</source>
        <translation>Bemer&amp;kungen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>To accept the balance is not to say that the machine is safe to run.</source>
        <translation>Die Abnahme der Auswuchtung heißt nicht, dass die Maschine sicher läuft.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>&amp;Close the job</source>
        <translation>Auftrag ab&amp;schließen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Write acceptance or refusal into the record and close it</source>
        <translation>Abnahme oder Ablehnung ins Protokoll schreiben und es schließen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Re&amp;open</source>
        <translation>Wieder ö&amp;ffnen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Go on with the closed job; the remarks say why</source>
        <translation>Den abgeschlossenen Auftrag fortsetzen; die Bemerkung sagt, warum</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Write who {0} it for the owner.</source>
        <translation>Angeben, wer es für den Betreiber {0} hat.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Write why it is refused.</source>
        <translation>Angeben, warum abgelehnt wird.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Write in the remarks why the job is reopened.</source>
        <translation>In den Bemerkungen angeben, warum der Auftrag wieder geöffnet wird.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>nothing to hold it against</source>
        <translation>kein Vergleichswert</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>cannot be told yet</source>
        <translation>noch nicht entscheidbar</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Goal now: {0}; not recorded yet.</source>
        <translation>Ziel jetzt: {0}; noch nicht protokolliert.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>, accepted by {0}</source>
        <translation>, abgenommen durch {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>, refused by {0}</source>
        <translation>, abgelehnt durch {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Recorded: {0} ({1}){2}.</source>
        <translation>Protokolliert: {0} ({1}){2}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Report and exports</source>
        <translation>Bericht und Ausgabe</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Units of the report</source>
        <translation>Einheiten im Bericht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Letter</source>
        <translation>Letter</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Make the &amp;report</source>
        <translation>Beri&amp;cht erstellen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Read the job and show the report as it will be written</source>
        <translation>Auftrag lesen und den Bericht so zeigen, wie er geschrieben wird</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>making the report</source>
        <translation>Bericht wird erstellt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Keep in the &amp;job</source>
        <translation>Im Au&amp;ftrag behalten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Write the PDF among the job's own reports</source>
        <translation>Das PDF zu den Berichten des Auftrags legen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Save {0}</source>
        <translation>{0} speichern</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Choose a place and write {0} there</source>
        <translation>Ort wählen und {0} dorthin schreiben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>do not trust this record: {0}</source>
        <translation>diesem Protokoll nicht trauen: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>The next visit</source>
        <translation>Nächster Einsatz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>&amp;Store coefficients</source>
        <translation>K&amp;oeffizienten behalten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Keep the influence coefficients of this job for the next visit</source>
        <translation>Die Einflusskoeffizienten dieses Auftrags für den nächsten Einsatz behalten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>&amp;Trend of this machine</source>
        <translation>&amp;Trend der Maschine</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>Read the jobs of this machine that lie beside this one</source>
        <translation>Die Aufträge dieser Maschine lesen, die neben diesem liegen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>reading jobs</source>
        <translation>Aufträge werden gelesen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>why it is opened again</source>
        <translation>warum er wieder geöffnet wird</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>The report is in English, as the record is.</source>
        <translation>Der Bericht ist auf Englisch, wie das Protokoll.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_cards.py"/>
        <source>&amp;Begin the next visit</source>
        <translation>Nächsten &amp;Einsatz beginnen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>Close-out</source>
        <translation>Abschluss</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>Report</source>
        <translation>Bericht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>Next visit</source>
        <translation>Nächster Einsatz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>No job is open: begin one or open one on the Brief page.</source>
        <translation>Kein Auftrag ist offen: unter Aufgabe einen anlegen oder öffnen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>Residual unbalance</source>
        <translation>Restunwucht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>Vibration</source>
        <translation>Schwingung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>Before and after</source>
        <translation>Vorher und nachher</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>Residual unbalance against the permissible one</source>
        <translation>Restunwucht gegen die zulässige</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>Vibration against limits</source>
        <translation>Schwingung gegen Grenzwerte</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>What is done</source>
        <translation>Was getan ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>Once per rev, {0}.</source>
        <translation>1. Ordnung, {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>the brief has neither goal, rotor mass nor limits</source>
        <translation>die Aufgabe nennt weder Ziel noch Rotormasse noch Grenzwerte</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>It cannot be told yet: no limit applies.</source>
        <translation>Noch nicht entscheidbar: kein Grenzwert gilt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>It cannot be told yet: {0}.</source>
        <translation>Noch nicht entscheidbar: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>no limit applies</source>
        <translation>kein Grenzwert gilt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>{0}. The job is {1}.</source>
        <translation>{0}. Der Auftrag ist {1}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>Stored as {0} in the job's folder.</source>
        <translation>Als {0} im Ordner des Auftrags behalten.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>broken off</source>
        <translation>abgebrochen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>Broken off.</source>
        <translation>Abgebrochen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>Written: {0}</source>
        <translation>Geschrieben: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>The job is closed.</source>
        <translation>Der Auftrag ist abgeschlossen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>No limit applies.</source>
        <translation>Kein Grenzwert gilt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>judged by run "{0}"</source>
        <translation>beurteilt nach Lauf „{0}“</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>Closing</source>
        <translation>Abschließen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_picture.py"/>
        <source>nothing to hold against a limit</source>
        <translation>nichts gegen einen Grenzwert zu halten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_picture.py"/>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_picture.py"/>
        <source>no limit</source>
        <translation>kein Grenzwert</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_preview.py"/>
        <source>Report as it will be written</source>
        <translation>Der Bericht, wie er geschrieben wird</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>not met</source>
        <translation>nicht eingehalten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>slow roll</source>
        <translation>Langsamlauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>run "{0}" and run "{1}"</source>
        <translation>Lauf „{0}“ und Lauf „{1}“</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>no run counts yet</source>
        <translation>noch zählt kein Lauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>there is no run after balancing yet</source>
        <translation>noch kein Lauf nach dem Auswuchten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>first and last run have no point in common</source>
        <translation>erster und letzter Lauf haben keinen gemeinsamen Messpunkt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>cannot be told</source>
        <translation>nicht entscheidbar</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>{0}, within with {1}</source>
        <translation>{0}, innerhalb mit {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>more than 99 %</source>
        <translation>mehr als 99 %</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>less than 1 %</source>
        <translation>weniger als 1 %</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>runs file, 1x</source>
        <translation>Laufdatei, 1x</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>agreed in the brief, once per rev</source>
        <translation>in der Aufgabe vereinbart, 1. Ordnung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>zone {0}, {1}</source>
        <translation>Zone {0}, {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>trial masses are still on: {0}</source>
        <translation>Testmassen sind noch dran: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>an initial run that counts</source>
        <translation>ein Urlauf, der zählt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>a run after balancing</source>
        <translation>ein Lauf nach dem Auswuchten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>a goal in the brief: a grade, a table or limits</source>
        <translation>ein Ziel in der Aufgabe: Gütestufe, Tabelle oder Grenzwerte</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>a recorded verdict</source>
        <translation>ein protokolliertes Ergebnis</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>acceptance or refusal</source>
        <translation>Abnahme oder Ablehnung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>influence coefficients are stored with this job: next time one initial run gives a correction, as long as mark edge, sensor places, supports and speed are the same</source>
        <translation>Einflusskoeffizienten sind mit diesem Auftrag gespeichert: beim nächsten Mal ergibt ein Urlauf den Ausgleich, solange Markenkante, Sensorplätze, Abstützung und Drehzahl gleich sind</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>influence coefficients can be stored, so that next time one initial run gives a correction</source>
        <translation>Einflusskoeffizienten lassen sich speichern, so dass beim nächsten Mal ein Urlauf den Ausgleich ergibt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>no influence coefficients yet: they need an initial run and a trial run for each plane</source>
        <translation>noch keine Einflusskoeffizienten: sie brauchen einen Urlauf und je Ebene einen Testlauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>first look for missing pieces, then take an initial run, then hold it against the last run of this job</source>
        <translation>erst nach fehlenden Stücken sehen, dann einen Urlauf machen und mit dem letzten Lauf dieses Auftrags vergleichen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>no job of "{0}" lies beside this one</source>
        <translation>neben diesem liegt kein Auftrag von „{0}“</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>{0}: {1} to {2}</source>
        <translation>{0}: {1} bis {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>; since the visit before {0}</source>
        <translation>; seit dem Einsatz davor {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>, then </source>
        <translation>, dann </translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>no reading in any job yet</source>
        <translation>noch kein Messwert in einem Auftrag</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>laying out</source>
        <translation>wird gesetzt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>begin it here once this job is closed, or on the Brief page: brief, hook-up and coefficients are taken over</source>
        <translation>hier beginnen, sobald dieser Auftrag abgeschlossen ist, oder auf der Seite Aufgabe: Aufgabe, Anschluss und Koeffizienten werden übernommen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_work.py"/>
        <source>{0}, {1}, first → last run of each job: {2}{3}</source>
        <translation>{0}, {1}, erster → letzter Lauf jedes Auftrags: {2}{3}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/face.py"/>
        <source>against rotation</source>
        <translation>gegen Drehsinn</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/face.py"/>
        <source>reference end</source>
        <translation>Bezugsseite</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/face.py"/>
        <source>{0} blades or holes: need 1 or more</source>
        <translation>{0} Schaufeln oder Löcher: 1 oder mehr nötig</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/face.py"/>
        <source>{0}:30 o'clock</source>
        <translation>{0}:30 Uhr</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/face.py"/>
        <source>{0} o'clock</source>
        <translation>{0} Uhr</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/face.py"/>
        <source>the end opposite {0}</source>
        <translation>Ende gegenüber {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/face.py"/>
        <source>seen from {0}, turning {1}, angles {2}</source>
        <translation>gesehen von: {0}; dreht {1}; Winkel {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/face.py"/>
        <source>pulse sensor and mark at {0}</source>
        <translation>Impulssensor und Marke bei {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/face.py"/>
        <source>sensor {0} at {1}</source>
        <translation>Sensor {0} bei {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/face.py"/>
        <source>, {0} blocked</source>
        <translation>, {0} gesperrt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/face.py"/>
        <source> plus or minus {0}</source>
        <translation> plus oder minus {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/face.py"/>
        <source>to go</source>
        <translation>offen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/face.py"/>
        <source>{0} {1} at {2} degrees{3}{4}, {5}</source>
        <translation>{0} {1} bei {2} Grad{3}{4}, {5}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/face.py"/>
        <source>the datum, {0}, is drawn at the top</source>
        <translation>der Bezug, {0}, ist oben gezeichnet</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>waited for</source>
        <translation>wird erwartet</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>Simulated rotor</source>
        <translation>Simulierter Rotor</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>makes its own samples, with the faults and masses of its panel; for learning and teaching</source>
        <translation>erzeugt seine Abtastwerte selbst, mit den Fehlern und Massen seines Felds; zum Lernen und Lehren</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>{0} input, {1} Hz</source>
        <translation>{0} Eingang, {1} Hz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>{0} inputs, {1} Hz</source>
        <translation>{0} Eingänge, {1} Hz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>{0}; its name says that software stands between, which may convert the samples</source>
        <translation>{0}; nach dem Namen liegt Software dazwischen, die die Abtastwerte umrechnen kann</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>{0}; nothing in its name says that samples are converted on the way</source>
        <translation>{0}; nichts im Namen deutet auf Umrechnung unterwegs</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>; one input only: pulse and vibration need two</source>
        <translation>; nur ein Eingang: Impuls und Schwingung brauchen zwei</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>Recording of {0}</source>
        <translation>Aufnahme von {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>{0}, played again</source>
        <translation>{0}, wieder abgespielt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>the simulated rotor</source>
        <translation>der simulierte Rotor</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>{0}: carries no hook-up; make one, or choose a hook-up file</source>
        <translation>{0}: enthält keinen Anschluss; einen anlegen oder eine Anschlussdatei wählen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>looking for inputs</source>
        <translation>Eingänge werden gesucht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>{0} s of samples: the check needs {1} s; wait a little</source>
        <translation>{0} s Messdaten: die Prüfung braucht {1} s; kurz warten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>signal check</source>
        <translation>Signalprüfung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>{0}: says nothing of sensors; choose a hook-up file first</source>
        <translation>{0}: sagt nichts über Sensoren; erst eine Anschlussdatei wählen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>no sound input is there: plug one in and look again</source>
        <translation>kein Audioeingang da: einen anstecken und neu suchen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/feed.py"/>
        <source>played again from {0}</source>
        <translation>wieder abgespielt aus {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/figures.py"/>
        <source>beat of {0} s</source>
        <translation>Schwebung von {0} s</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/figures.py"/>
        <source>drift of {0}°/min</source>
        <translation>Drift von {0}°/min</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/figures.py"/>
        <source>not determined</source>
        <translation>nicht bestimmt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/figures.py"/>
        <source>{0}: {1} {2}, plus or minus {3}, at {4} degrees, plus or minus {5}</source>
        <translation>{0}: {1} {2}, plus oder minus {3}, bei {4} Grad, plus oder minus {5}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/figures.py"/>
        <source>{0} {1} {2} at {3}°, {4} vectors</source>
        <translation>{0} {1} {2} bei {3}°, {4} Zeiger</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/figures.py"/>
        <source>no vectors yet</source>
        <translation>noch keine Zeiger</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>&amp;View</source>
        <translation>&amp;Ansicht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>Units, angles, viewing end, colours, text size, language</source>
        <translation>Einheiten, Winkel, Blickrichtung, Farben, Schriftgröße, Sprache</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>Begin a job, open one, or one of late (Ctrl+J)</source>
        <translation>Auftrag anlegen, öffnen oder einen der letzten wählen (Strg+J)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>Hook-up</source>
        <translation>Anschluss</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>Wh&amp;y?</source>
        <translation>Wa&amp;rum?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>&amp;Go</source>
        <translation>&amp;Los</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>&amp;Go to {0}</source>
        <translation>&amp;Weiter zu {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>Why this is advised, and how to do otherwise</source>
        <translation>Warum das geraten wird und wie es anders geht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>Explain (F1)</source>
        <translation>Erklären (F1)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>Why what is shown is so, with the rule behind it; or press on a figure</source>
        <translation>Warum das Gezeigte so ist, mit der Regel dahinter; oder auf einen Wert drücken</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>loading pages</source>
        <translation>Seiten werden geladen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>The pages are being loaded.</source>
        <translation>Die Seiten werden geladen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>What comes next is being worked out.</source>
        <translation>Der nächste Schritt wird ermittelt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>Choose a stage on the left.</source>
        <translation>Links einen Schritt wählen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>Guides</source>
        <translation>Leitfäden</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/frame.py"/>
        <source>How to begin, wire up, trust a phase, go step by step; and the theory (Ctrl+F1)</source>
        <translation>Wie man beginnt, anschließt, einer Phase traut, Schritt für Schritt vorgeht; und die Theorie (Strg+F1)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/guide_reader.py"/>
        <source>Guide</source>
        <translation>Leitfaden</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/guide_reader.py"/>
        <source>Back to the &amp;page</source>
        <translation>Zurück zur &amp;Seite</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/guide_reader.py"/>
        <source>Put the guides away (Esc)</source>
        <translation>Die Leitfäden schließen (Esc)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/guide_reader.py"/>
        <source>The guides are in English.</source>
        <translation>Die Leitfäden sind auf Englisch.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/guide_reader.py"/>
        <source>Wiring</source>
        <translation>Verdrahtung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/guide_reader.py"/>
        <source>Trust</source>
        <translation>Vertrauen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/guide_reader.py"/>
        <source>Steps</source>
        <translation>Schritte</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/guide_reader.py"/>
        <source>Theory</source>
        <translation>Theorie</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/guide_reader.py"/>
        <source>First job</source>
        <translation>Anfang</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_checks.py"/>
        <source>check at standstill</source>
        <translation>Prüfung im Stillstand</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_checks.py"/>
        <source>tap check</source>
        <translation>Klopfprüfung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_checks.py"/>
        <source>Recorded as evidence in the job.</source>
        <translation>Als Befund im Auftrag protokolliert.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_checks.py"/>
        <source>looking at it</source>
        <translation>wird angesehen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_checks.py"/>
        <source>{0} of {1} sensors</source>
        <translation>{0} von {1} Sensoren</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_checks.py"/>
        <source>Not recorded in the job: {0}.</source>
        <translation>Nicht im Auftrag protokolliert: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_checks.py"/>
        <source>{0} The {1} edge of the pulse is kept for all runs.</source>
        <translation>{0} Die {1} Flanke des Impulses gilt für alle Läufe.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Vibration in</source>
        <translation>Schwingung in</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Input</source>
        <translation>Eingang</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>1 to 64</source>
        <translation>1 bis 64</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Edge</source>
        <translation>Flanke</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Pulses per revolution</source>
        <translation>Impulse je Umdrehung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Reference mark</source>
        <translation>Bezugsmarke</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Angle of the pulse sensor</source>
        <translation>Winkel des Impulssensors</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>degrees from the datum</source>
        <translation>Grad ab dem Bezug</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Range</source>
        <translation>Messbereich</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>such as 10 V</source>
        <translation>z. B. 10 V</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Coupling</source>
        <translation>Kopplung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>IEPE current</source>
        <translation>IEPE-Strom</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>such as 4 mA, 0 mA for off</source>
        <translation>z. B. 4 mA, 0 mA für aus</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Terminals</source>
        <translation>Beschaltung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Looked at from</source>
        <translation>Blick von</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>drive, non-drive, …</source>
        <translation>Antriebsseite, Gegenseite, …</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Rotation, seen from there</source>
        <translation>Drehsinn, von dort gesehen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Datum: where angle 0 is</source>
        <translation>Bezug: wo Winkel 0 ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>such as 12 o'clock</source>
        <translation>z. B. 12 Uhr</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>such as fan end horizontal</source>
        <translation>z. B. Ventilatorseite waagerecht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Quantity</source>
        <translation>Messgröße</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Direction</source>
        <translation>Richtung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Sensitivity</source>
        <translation>Empfindlichkeit</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>such as 100 mV/g</source>
        <translation>z. B. 100 mV/g</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Full scale</source>
        <translation>Vollaussteuerung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>such as 2.0 V</source>
        <translation>z. B. 2.0 V</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Angle</source>
        <translation>Winkel</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Inverted</source>
        <translation>Umgepolt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Delay</source>
        <translation>Verzug</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>such as 12 us</source>
        <translation>z. B. 12 us</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>such as 2.0 Hz, 0.8 Hz</source>
        <translation>z. B. 2.0 Hz, 0.8 Hz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Mount</source>
        <translation>Befestigung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Remove this input</source>
        <translation>Eingang entfernen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Take it out of the hook-up; undo brings it back</source>
        <translation>Aus dem Anschluss nehmen; „Zurück“ holt ihn wieder</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Remove {0}</source>
        <translation>{0} entfernen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_model.py"/>
        <source>12 o'clock</source>
        <translation>12 Uhr</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_model.py"/>
        <source>{0}: "{1}" is not a whole number</source>
        <translation>{0}: „{1}“ ist keine ganze Zahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_model.py"/>
        <source>{0}: "{1}" is not a number of degrees</source>
        <translation>{0}: „{1}“ ist keine Gradzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_model.py"/>
        <source>a hook-up needs at least one point: change this one instead</source>
        <translation>ein Anschluss braucht mindestens einen Messpunkt: statt dessen diesen ändern</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_model.py"/>
        <source>point 1</source>
        <translation>Messpunkt 1</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_model.py"/>
        <source>Calibrated {0} by {1}: ± {2}.</source>
        <translation>{0} kalibriert mit {1}: ± {2}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_model.py"/>
        <source>Usable to about {0} Hz (rule of thumb).</source>
        <translation>Brauchbar bis etwa {0} Hz (Faustregel).</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_model.py"/>
        <source>{0} Too unsteady for vectors: fix the sensor.</source>
        <translation>{0} Zu unruhig für Zeiger: Sensor befestigen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_model.py"/>
        <source>Motion towards the sensor's own positive axis is read as negative.</source>
        <translation>Bewegung zur positiven Achse des Sensors zählt negativ.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_model.py"/>
        <source>{0}: cannot be written: {1}</source>
        <translation>{0}: nicht schreibbar: {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>&amp;Undo</source>
        <translation>Rückg&amp;ängig</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Stop</source>
        <translation>Stopp</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Rotor face</source>
        <translation>Rotoransicht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Nothing is wired up yet: choose a hook-up file, or begin a new hook-up.</source>
        <translation>Noch ist nichts angeschlossen: Anschlussdatei wählen oder neuen Anschluss beginnen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Take back the last change (Ctrl+Z)</source>
        <translation>Letzte Änderung zurücknehmen (Strg+Z)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Redo</source>
        <translation>Wieder</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Chec&amp;k signals</source>
        <translation>&amp;Prüfen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Look at the last {0} s and say what is wrong</source>
        <translation>Die letzten {0} s ansehen und sagen, was nicht stimmt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>S&amp;tart</source>
        <translation>S&amp;tart</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Let the source run, or stop it</source>
        <translation>Quelle laufen lassen oder anhalten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Sides, angles, unit</source>
        <translation>Seiten, Winkel, Einheit</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Angles of sensors count from the datum in the direction of rotation; positive is motion towards that direction.</source>
        <translation>Winkel der Sensoren zählen vom Bezug in Drehrichtung; positiv ist Bewegung in diese Richtung.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Data acquisition device</source>
        <translation>Messgerät (DAQ)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>For devices only. Full scale of each input is the range.</source>
        <translation>Nur für Messgeräte. Vollaussteuerung jedes Eingangs ist der Messbereich.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>At the right</source>
        <translation>Rechts</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Its usual sensitivity was set: enter the sensor's own.</source>
        <translation>Die übliche Empfindlichkeit ist gesetzt: die des Sensors eintragen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>reading a hook-up</source>
        <translation>Anschluss wird gelesen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>writing a hook-up</source>
        <translation>Anschluss wird geschrieben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Written to {0}.</source>
        <translation>Geschrieben nach {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Listening at standstill …</source>
        <translation>Lauscht im Stillstand …</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>The machine stands, isolated and locked. Wait for the first sensor to be named.</source>
        <translation>Die Maschine steht, freigeschaltet und gesichert. Warten, bis der erste Sensor genannt wird.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Recording of the known signal</source>
        <translation>Aufnahme des bekannten Signals</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Written into the hook-up, {0}.</source>
        <translation>In den Anschluss geschrieben, {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Not written: {0}.</source>
        <translation>Nicht geschrieben: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>running, {0} inputs at {1} Hz</source>
        <translation>läuft, {0} Eingänge mit {1} Hz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>S&amp;top</source>
        <translation>S&amp;topp</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Start</source>
        <translation>Start</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Not checked since the source was started.</source>
        <translation>Seit dem Start der Quelle nicht geprüft.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Looking at the last seconds …</source>
        <translation>Die letzten Sekunden werden angesehen …</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>{0} to put right first, {1} to look at.</source>
        <translation>{0} zuerst zu beheben, {1} anzusehen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Nothing was found that speaks against measuring.</source>
        <translation>Nichts spricht gegen das Messen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Each tap shows where it should.</source>
        <translation>Jedes Klopfen kommt dort an, wo es soll.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>No pulses come while the machine stands.</source>
        <translation>Im Stillstand kommen keine Impulse.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Broken off; nothing was recorded.</source>
        <translation>Abgebrochen; nichts wurde protokolliert.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Not calibrated: {0}.</source>
        <translation>Nicht kalibriert: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Signals come in: check them before the first run.</source>
        <translation>Signale kommen an: vor dem ersten Lauf prüfen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>The abort level at {0} can never call for a stop: no input here has that name.</source>
        <translation>Der Abschaltpegel an {0} kann nie zum Abschalten auffordern: Kein Eingang hat hier diesen Namen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>running, {0} inputs at {1} kHz</source>
        <translation>läuft, {0} Eingänge mit {1} kHz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>{0} to put right first.</source>
        <translation>{0} zuerst zu beheben.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>{0} to look at.</source>
        <translation>{0} anzusehen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Hook-up (*.toml);;All files (*)</source>
        <translation>Anschluss (*.toml);;Alle Dateien (*)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Recordings (*.au);;All files (*)</source>
        <translation>Aufnahmen (*.au);;Alle Dateien (*)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Find &amp;inputs</source>
        <translation>E&amp;ingänge suchen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Look for sound inputs that are plugged in</source>
        <translation>Angesteckte Audioeingänge suchen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>By name…</source>
        <translation>Mit Namen…</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>A recording, a board on a serial line, or a data acquisition device</source>
        <translation>Eine Aufnahme, eine Platine an serieller Leitung oder ein Messgerät</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Sou&amp;rce</source>
        <translation>&amp;Quelle</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Hook-up &amp;file…</source>
        <translation>Anschluss&amp;datei…</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Read what is wired to which input from a file</source>
        <translation>Aus einer Datei lesen, was an welchem Eingang liegt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>E&amp;xport…</source>
        <translation>E&amp;xport…</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Write the hook-up into a file</source>
        <translation>Anschluss in eine Datei schreiben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>New hook-up</source>
        <translation>Neuer Anschluss</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Begin with the pulse and one sensor</source>
        <translation>Mit dem Impuls und einem Sensor beginnen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Set for this &amp;job</source>
        <translation>Für Auftrag setzen (&amp;Y)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>The job has no hook-up yet: take the one that is shown</source>
        <translation>Der Auftrag hat noch keinen Anschluss: den gezeigten übernehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Source by name</source>
        <translation>Quelle nach Namen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Sample rate</source>
        <translation>Abtastrate</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>its own, or such as 25600 Hz</source>
        <translation>eigene, oder z. B. 25600 Hz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Take this source</source>
        <translation>Diese Quelle nehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Recording…</source>
        <translation>Aufnahme…</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Play a recording as a source</source>
        <translation>Eine Aufnahme als Quelle abspielen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Recording to play</source>
        <translation>Aufnahme zum Abspielen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Hook-up file</source>
        <translation>Anschlussdatei</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>Looking …</source>
        <translation>Sucht …</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>. Hook-up: the job's</source>
        <translation>. Anschluss: der des Auftrags</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>. Hook-up: {0}</source>
        <translation>. Anschluss: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_source_card.py"/>
        <source>. The job has no hook-up yet; what is changed here is set for it</source>
        <translation>. Der Auftrag hat noch keinen Anschluss; was hier geändert wird, gilt für ihn</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_sources.py"/>
        <source>never tried on a real device</source>
        <translation>nie an einem echten Gerät erprobt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_sources.py"/>
        <source>Recording {0}</source>
        <translation>Aufnahme {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_sources.py"/>
        <source>played in its own time; it brings its hook-up along unless another one is set</source>
        <translation>in eigener Zeit abgespielt; bringt ihren Anschluss mit, wenn kein anderer gesetzt ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_sources.py"/>
        <source>name a source, such as serial:/dev/ttyACM0 or nidaqmx:Dev1/ai0</source>
        <translation>eine Quelle nennen, etwa serial:/dev/ttyACM0 oder nidaqmx:Dev1/ai0</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_sources.py"/>
        <source>sample rate</source>
        <translation>Abtastrate</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_sources.py"/>
        <source>sample rate: "{0}" is not between 100 Hz and 1 MHz</source>
        <translation>Abtastrate: „{0}“ liegt nicht zwischen 100 Hz und 1 MHz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_sources.py"/>
        <source>the machine that this file describes, simulated</source>
        <translation>die Maschine, die diese Datei beschreibt, simuliert</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_sources.py"/>
        <source>board on a serial line, samples as the board made them; {0}</source>
        <translation>Platine an serieller Leitung, Abtastwerte wie von ihr gemacht; {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_sources.py"/>
        <source>{0}: needs a sample rate, such as 25600 Hz</source>
        <translation>{0}: braucht eine Abtastrate, etwa 25600 Hz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_sources.py"/>
        <source>samples as the device made them, {0} Hz; the program's part for it was {1}</source>
        <translation>Abtastwerte wie vom Gerät gemacht, {0} Hz; der Programmteil dafür ist {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_sources.py"/>
        <source>its own rate</source>
        <translation>eigene Rate</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_sources.py"/>
        <source>sound input by its name, {0}; whether samples are converted is told when it is listed</source>
        <translation>Audioeingang nach Namen, {0}; ob Abtastwerte umgerechnet werden, zeigt sich in der Liste</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_sources.py"/>
        <source>simulated rotor at rest, tapped</source>
        <translation>simulierter Rotor in Ruhe, beklopft</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>Attention</source>
        <translation>Achtung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>Put right first</source>
        <translation>Zuerst beheben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>Fine</source>
        <translation>In Ordnung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>at {0}°</source>
        <translation>bei {0}°</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>corner {0} Hz</source>
        <translation>Eckfrequenz {0} Hz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>one mark</source>
        <translation>eine Marke</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>{0} marks, {1}</source>
        <translation>{0} Marken, {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>{0} edge · {1} · at {2}°</source>
        <translation>{0} Flanke · {1} · bei {2}°</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>no signal</source>
        <translation>kein Signal</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>Edit</source>
        <translation>Ändern</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>Open the fields of this input</source>
        <translation>Felder dieses Eingangs öffnen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>Level of {0}</source>
        <translation>Pegel von {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>Inputs</source>
        <translation>Eingänge</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>peak and level in dB of full scale</source>
        <translation>Spitze und Pegel in dB zur Vollaussteuerung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>Add in&amp;put</source>
        <translation>Ein&amp;gang hinzufügen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>A row for one more sensor, on the first input that is free</source>
        <translation>Eine Zeile für einen weiteren Sensor, am ersten freien Eingang</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>Pulse as it is seen</source>
        <translation>Impuls, wie er ankommt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>no pulse signal yet</source>
        <translation>noch kein Impulssignal</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>What to do: {0}</source>
        <translation>Was zu tun ist: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>Signal check</source>
        <translation>Signalprüfung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>Not checked yet.</source>
        <translation>Noch nicht geprüft.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>this check</source>
        <translation>diese Prüfung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>C&amp;heck at standstill</source>
        <translation>Pr&amp;üfung im Stillstand</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>The machine stands: there must be no pulses; listens for some seconds</source>
        <translation>Die Maschine steht: es darf keine Impulse geben; lauscht einige Sekunden</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>Tap &amp;each sensor</source>
        <translation>Sensoren be&amp;klopfen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>The machine stands, isolated and locked: asks for a tap at each sensor in turn</source>
        <translation>Die Maschine steht, freigeschaltet und gesichert: bittet der Reihe nach um ein Klopfen an jedem Sensor</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_answers.py"/>
        <source>needs attention</source>
        <translation>beachten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_answers.py"/>
        <source>not done</source>
        <translation>nicht gemacht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_answers.py"/>
        <source>looked at: </source>
        <translation>angesehen: </translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_answers.py"/>
        <source>"{0}": write a figure and how well it is known, such as "40 ± 5"</source>
        <translation>„{0}“: einen Wert schreiben und wie genau er bekannt ist, etwa „40 ± 5“</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_answers.py"/>
        <source>What may be wrong</source>
        <translation>Mögliche Ursachen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_answers.py"/>
        <source>nothing measured yet</source>
        <translation>noch nichts gemessen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_answers.py"/>
        <source>several causes possible</source>
        <translation>mehrere Ursachen möglich</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_answers.py"/>
        <source>measured, no outcome yet</source>
        <translation>gemessen, noch kein Ergebnis</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_answers.py"/>
        <source>not looked at</source>
        <translation>nicht angesehen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_answers.py"/>
        <source>not done: {0}</source>
        <translation>nicht gemacht: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>Beware</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>Local rules and licensed or competent persons come before this list.</source>
        <translation>Örtliche Vorschriften und zugelassene oder befähigte Personen gehen dieser Liste vor.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>Check: {0}</source>
        <translation>Prüfung: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>What was found</source>
        <translation>Was sich ergab</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>Fine: {0}.</source>
        <translation>In Ordnung: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>Source: {0}.</source>
        <translation>Quelle: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>Outcome</source>
        <translation>Ergebnis</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>photos, {0}</source>
        <translation>Fotos, {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>Note, or why it is not done</source>
        <translation>Notiz, oder warum nicht gemacht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>Write why it is not done, then choose it again.</source>
        <translation>Angeben, warum nicht gemacht, dann noch einmal wählen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>The note is recorded with the outcome: choose one.</source>
        <translation>Die Notiz wird mit dem Ergebnis protokolliert: eines wählen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>a check that is not done keeps its reason</source>
        <translation>eine Prüfung, die nicht gemacht wird, behält ihren Grund</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>answer taken back</source>
        <translation>Antwort zurückgenommen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>Recorded {0}</source>
        <translation>Protokolliert {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source> by {0}.</source>
        <translation> durch {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>No outcome yet.</source>
        <translation>Noch kein Ergebnis.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_check.py"/>
        <source>such as 40 ± 5</source>
        <translation>z. B. 40 ± 5</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Balance</source>
        <translation>Auswuchten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Look further</source>
        <translation>Weiter suchen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Most like: {0}</source>
        <translation>Am ehesten: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>{0} for, {1} against</source>
        <translation>{0} dafür, {1} dagegen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Goes to the check that it comes from</source>
        <translation>Führt zur Prüfung, aus der es kommt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Goes to the Brief</source>
        <translation>Führt zur Aufgabe</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Nothing measured speaks for or against it yet.</source>
        <translation>Noch spricht nichts Gemessenes dafür oder dagegen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Hide</source>
        <translation>Verbergen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Show</source>
        <translation>Zeigen:</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>{0} figures of {1}: {2}</source>
        <translation>{0} Befunde zu {1}: {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>What would tell more</source>
        <translation>Was mehr sagen würde</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>, which tells {0}</source>
        <translation>, das sagt {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Goes to this check</source>
        <translation>Führt zu dieser Prüfung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Your decision</source>
        <translation>Ihre Entscheidung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>The figures suggest; you decide. Decision and reason are recorded.</source>
        <translation>Die Befunde legen etwas nahe; die Entscheidung liegt bei Ihnen. Entscheidung und Grund werden protokolliert.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Decision</source>
        <translation>Entscheidung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>What is decided</source>
        <translation>Was entschieden ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>such as: balance</source>
        <translation>z. B.: auswuchten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Because</source>
        <translation>Weil</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>the figures, or what else is known</source>
        <translation>die Befunde, oder was sonst bekannt ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Record &amp;decision</source>
        <translation>Entscheidung &amp;protokollieren</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Say what is decided first.</source>
        <translation>Erst sagen, was entschieden ist.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Say why first.</source>
        <translation>Erst sagen, warum.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>what is decided</source>
        <translation>was entschieden ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>, because {0}</source>
        <translation>, weil {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Causes in the order of their odds, by what was measured and answered so far.</source>
        <translation>Ursachen in der Reihenfolge ihrer Wahrscheinlichkeit, nach dem bisher Gemessenen und Beantworteten.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Unlikely: {0}.</source>
        <translation>Unwahrscheinlich: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_diagnosis.py"/>
        <source>Nothing told of: {0}. That does not mean absent.</source>
        <translation>Nichts gesagt zu: {0}. Das heißt nicht, dass es fehlt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>Let the machine run at its usual speed.</source>
        <translation>Die Maschine mit üblicher Drehzahl laufen lassen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>Spectrum, directions, steadiness</source>
        <translation>Spektrum, Richtungen, Stabilität</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>Hold speed and load steady.</source>
        <translation>Drehzahl und Last konstant halten.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>Coast-down or run-up</source>
        <translation>Auslauf oder Hochlauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>Press, then switch the machine off and let it coast down.</source>
        <translation>Drücken, dann die Maschine abschalten und auslaufen lassen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>Bump test</source>
        <translation>Anschlagversuch</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>The machine stands, isolated and locked: three clear blows, each rung out.</source>
        <translation>Die Maschine steht, freigeschaltet und gesichert: drei klare Schläge, jeden ausklingen lassen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>Neighbours with this machine stopped</source>
        <translation>Nachbarn bei stehender Maschine</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>This machine stands, the others run as usual.</source>
        <translation>Diese Maschine steht, die anderen laufen wie üblich.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>Two initial runs against each other</source>
        <translation>Zwei Urläufe gegeneinander</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>Needs two runs without masses, from the Runs page.</source>
        <translation>Braucht zwei Läufe ohne Massen, von der Seite Läufe.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>broken off; nothing was recorded</source>
        <translation>abgebrochen; nichts wurde protokolliert</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>getting ready</source>
        <translation>wird vorbereitet</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>recording, {0} s{1}</source>
        <translation>nimmt auf, {0} s{1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>{0}; what was recorded is kept as {1}</source>
        <translation>{0}; das Aufgenommene liegt als {1} vor</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>{0}; the recording is kept as {1}</source>
        <translation>{0}; die Aufnahme liegt als {1} vor</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>the job has no hook-up yet: set it on the Hook-up page</source>
        <translation>der Auftrag hat noch keinen Anschluss: auf der Seite Anschluss festlegen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>breaking off</source>
        <translation>bricht ab</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_measure.py"/>
        <source>measured check</source>
        <translation>Messprüfung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_page.py"/>
        <source>Inspect</source>
        <translation>Prüfen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_page.py"/>
        <source>Recordings (*.au *.wav *.flac *.caf *.csv *.txt *.uff *.unv *.h5 *.hdf5 *.tdms);;All files (*)</source>
        <translation>Aufnahmen (*.au *.wav *.flac *.caf *.csv *.txt *.uff *.unv *.h5 *.hdf5 *.tdms);;Alle Dateien (*)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_page.py"/>
        <source>Checks</source>
        <translation>Prüfungen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_page.py"/>
        <source>Check</source>
        <translation>Prüfung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_page.py"/>
        <source>No job is open: begin one, or open one, on the Brief page.</source>
        <translation>Kein Auftrag ist offen: unter Aufgabe einen anlegen oder öffnen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_page.py"/>
        <source>{0}: {1} of {2} checks have an outcome.</source>
        <translation>{0}: {1} von {2} Prüfungen haben ein Ergebnis.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_page.py"/>
        <source>Inspection: {0} needs attention.</source>
        <translation>Prüfung: {0} ist zu beachten.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_page.py"/>
        <source>{0} is likely: {1}.</source>
        <translation>{0} ist wahrscheinlich: {1}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_page.py"/>
        <source>Inspection: {0} has no outcome yet.</source>
        <translation>Prüfung: {0} hat noch kein Ergebnis.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_page.py"/>
        <source>To be seen to on Inspect: {0}.</source>
        <translation>Beim Prüfen zu beachten: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>{0}: {1} of the mean square</source>
        <translation>{0}: {1} des mittleren Quadrats</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>{0} over {1}: {2}{3}, {4}{5}° apart</source>
        <translation>{0} zu {1}: {2}{3}, {4}{5}° auseinander</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>no margin can be given</source>
        <translation>kein Abstand anzugeben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>the nearest is {0} % from running speed</source>
        <translation>die nächste liegt {0} % neben der Betriebsdrehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>{0}, {1} to {2} r/min: {3}</source>
        <translation>{0}, {1} bis {2} r/min: {3}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>{0}: resonance at {1}{2} r/min, amplification {3}</source>
        <translation>{0}: Resonanz bei {1}{2} r/min, Überhöhung {3}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>Compare</source>
        <translation>Vergleichen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>Record {0} s</source>
        <translation>{0} s aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>From the source chosen on Hook-up</source>
        <translation>Von der unter Anschluss gewählten Quelle</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>From a recording…</source>
        <translation>Aus einer Aufnahme…</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>From a recording: {0}</source>
        <translation>Aus einer Aufnahme: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>Progress: {0}</source>
        <translation>Fortschritt: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>Break off</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>Break off: {0}</source>
        <translation>Abbrechen: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>{0} when all is ready. {1}</source>
        <translation>{0}, wenn alles bereit ist. {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>Measured {0}</source>
        <translation>Gemessen {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>{0}; not to be trusted yet</source>
        <translation>{0}; noch nicht verlässlich</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>The figures of this entry are not as this program writes them.</source>
        <translation>Die Werte dieses Eintrags sind nicht so, wie dieses Programm sie schreibt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>{0} ± {1} Hz ({2} r/min), damping ratio {3}, seen best at {4}</source>
        <translation>{0} ± {1} Hz ({2} r/min), Dämpfungsgrad {3}, am besten zu sehen bei {4}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>{0} over {1}: {2}, {3}° apart</source>
        <translation>{0} zu {1}: {2}, {3}° auseinander</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>{0}: resonance at {1}, amplification {2}</source>
        <translation>{0}: Resonanz bei {1}, Überhöhung {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_result.py"/>
        <source>{0} ({1} r/min), damping ratio {2}, seen best at {3}</source>
        <translation>{0} ({1} r/min), Dämpfungsgrad {2}, am besten zu sehen bei {3}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_source.py"/>
        <source>simulated rotor at rest</source>
        <translation>simulierter Rotor in Ruhe</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_start.py"/>
        <source>Not now</source>
        <translation>Jetzt nicht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_start.py"/>
        <source>Nothing is recorded, and nothing is measured</source>
        <translation>Nichts wird protokolliert, nichts gemessen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_start.py"/>
        <source>{0}: see to this first, then record.</source>
        <translation>{0}: erst dafür sorgen, dann aufnehmen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>No job is open.</source>
        <translation>Kein Auftrag ist offen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Begin a job (Ctrl+N)</source>
        <translation>Auftrag anlegen (Strg+N)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Open a job…</source>
        <translation>Auftrag öffnen…</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Go on with a job (Ctrl+O)</source>
        <translation>Mit einem Auftrag fortfahren (Strg+O)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Open of late</source>
        <translation>Zuletzt offen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Open: {0}</source>
        <translation>Offen: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Open {0}</source>
        <translation>{0} öffnen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Why this is advised</source>
        <translation>Warum das geraten wird</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>kept in the record</source>
        <translation>kommt ins Protokoll</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Pass over it</source>
        <translation>Übergehen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Go on without it, with the reason</source>
        <translation>Ohne das weitermachen, mit Begründung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>End the balancing</source>
        <translation>Auswuchten beenden</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Leave the machine as it is, with the reason</source>
        <translation>Die Maschine lassen, wie sie ist, mit Begründung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Your reason to do otherwise</source>
        <translation>Ihr Grund, anders vorzugehen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>This cannot be passed over.</source>
        <translation>Das lässt sich nicht übergehen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Write the reason first.</source>
        <translation>Erst den Grund schreiben.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Tour: balance a fan</source>
        <translation>Rundgang: einen Ventilator auswuchten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>From the first run to the verdict in less than five minutes</source>
        <translation>Vom ersten Lauf zum Ergebnis in weniger als fünf Minuten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>walking phase</source>
        <translation>wandernde Phase</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Lesson: a phase that walks</source>
        <translation>Lektion: eine Phase, die wandert</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>A neighbour close in speed: see the beat, and get a run that serves</source>
        <translation>Ein Nachbar mit naher Drehzahl: die Schwebung sehen und einen brauchbaren Lauf bekommen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>weak trial</source>
        <translation>schwacher Test</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Lesson: a trial mass too weak</source>
        <translation>Lektion: eine zu schwache Testmasse</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>An interval without end, and what puts it right</source>
        <translation>Ein Bereich ohne Ende, und was dagegen hilft</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Lesson: couple on an overhung fan</source>
        <translation>Lektion: Momentenunwucht, fliegender Ventilator</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>The static part first, then judge what is left</source>
        <translation>Zuerst der statische Anteil, dann beurteilen, was bleibt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/job_panel.py"/>
        <source>Practice on a simulated machine</source>
        <translation>Üben an einer simulierten Maschine</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>put on</source>
        <translation>anbringen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>first trial</source>
        <translation>erster Test</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>larger trial</source>
        <translation>größerer Test</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>A couple is left</source>
        <translation>Ein Momentenanteil bleibt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>Nothing is left</source>
        <translation>Nichts bleibt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>No run yet shows the second source.</source>
        <translation>Noch zeigt kein Lauf die zweite Quelle.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>Your run “{0}” saw a beat of {1} s, {2} % of the vibration.</source>
        <translation>Ihr Lauf „{0}“ zeigt eine Schwebung von {1} s mit {2} % der Schwingung.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>No run counts yet: record whole beats.</source>
        <translation>Noch zählt kein Lauf: ganze Schwebungen aufnehmen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>Your run “{0}” counts, but is too short for its beat: up to {1} % off.</source>
        <translation>Ihr Lauf „{0}“ zählt, ist aber zu kurz für seine Schwebung: bis zu {1} % daneben.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>no beat was left in it</source>
        <translation>keine Schwebung ist darin geblieben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>the beat moves its mean by {0} % at the most</source>
        <translation>die Schwebung verschiebt sein Mittel um höchstens {0} %</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>Your run “{0}” of {1} s serves: {2}.</source>
        <translation>Ihr Lauf „{0}“ von {1} s taugt: {2}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>There is no trial run for it yet.</source>
        <translation>Dafür gibt es noch keinen Testlauf.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>its mass is determined</source>
        <translation>seine Masse ist bestimmt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>its mass is not determined</source>
        <translation>seine Masse ist nicht bestimmt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>below {0} is too weak</source>
        <translation>unter {0} ist zu schwach</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>{0} and more is good</source>
        <translation>ab {0} ist es gut</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>Your {0}: {1} standard deviations, and {2}; {3}.</source>
        <translation>Ihr {0}: {1} Standardabweichungen, und {2}; {3}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>judged from the run after the correction</source>
        <translation>beurteilt nach dem Lauf nach dem Ausgleich</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>You corrected no plane first.</source>
        <translation>Sie haben zuerst keine Ebene ausgeglichen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>You corrected {0} first.</source>
        <translation>Sie haben zuerst {0} ausgeglichen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>no plane</source>
        <translation>keine Ebene</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>There is no judgement of the couple yet.</source>
        <translation>Der Momentenanteil ist noch nicht beurteilt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>your judgement fits</source>
        <translation>Ihr Urteil trifft zu</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>your judgement does not fit</source>
        <translation>Ihr Urteil trifft nicht zu</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>Vibration in {0}: {1}. Above the limit: yes; {2}.</source>
        <translation>Schwingung in {0}: {1}. Über dem Grenzwert: ja; {2}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>Vibration in {0}: {1}. Above the limit: no; {2}.</source>
        <translation>Schwingung in {0}: {1}. Über dem Grenzwert: nein; {2}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>A neighbour that makes the phase walk</source>
        <translation>Ein Nachbar, der die Phase wandern lässt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>A machine beside yours runs nearly as fast. Get a run that can be used all the same.</source>
        <translation>Eine Maschine neben Ihrer läuft fast gleich schnell. Trotzdem einen brauchbaren Lauf bekommen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>A trial mass that is too weak</source>
        <translation>Eine zu schwache Testmasse</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>See what a trial mass that is far too light tells, and put it right.</source>
        <translation>Sehen, was eine viel zu leichte Testmasse sagt, und es in Ordnung bringen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>A couple on an overhung fan</source>
        <translation>Momentenunwucht an einem fliegenden Ventilator</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>The disc hangs outside its bearings. Take the static part away first, then judge what is left.</source>
        <translation>Die Scheibe sitzt außerhalb ihrer Lager. Zuerst den statischen Anteil beseitigen, dann beurteilen, was bleibt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons.py"/>
        <source>{0} first {1}, now {2}</source>
        <translation>{0} zuerst {1}, jetzt {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Record longer</source>
        <translation>Länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Use it as it is</source>
        <translation>So verwenden</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>It is well known</source>
        <translation>Sie ist gut bekannt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Nothing is known of it</source>
        <translation>Nichts ist bekannt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Your record is looked at.</source>
        <translation>Ihr Protokoll wird geprüft.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>The goal is reached.</source>
        <translation>Das Ziel ist erreicht.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>The goal is not reached: begin the lesson again from the Job panel.</source>
        <translation>Das Ziel ist nicht erreicht: die Lektion unter „Auftrag“ neu beginnen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Look at dots and ribbon: they swing round and round. That is a second source close in speed.</source>
        <translation>Punkte und Band ansehen: sie schwingen im Kreis. Das ist eine zweite Quelle mit naher Drehzahl.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>{0} Measure first: press here.</source>
        <translation>{0} Zuerst messen: hier drücken.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>This run counts. Stop the machine.</source>
        <translation>Dieser Lauf zählt. Maschine abstellen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Your run waits for you on Runs.</source>
        <translation>Ihr Lauf wartet unter Läufe.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Look at the run that was taken.</source>
        <translation>Den aufgenommenen Lauf ansehen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Say how long the next run is to be: see what is next.</source>
        <translation>Angeben, wie lang der nächste Lauf sein soll: „Weiter“ ansehen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>At least {0} s are wanted. Choose “{1}”.</source>
        <translation>Mindestens {0} s sind nötig. „{1}“ wählen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Go to Live, and record it.</source>
        <translation>Zu „Live“ gehen und aufnehmen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Its mean may be off by {0} %, and nobody knows which way. What else can be done?</source>
        <translation>Sein Mittel kann um {0} % daneben liegen, und niemand weiß, in welche Richtung. Was geht sonst?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>This run was doubted: read why. What do you do?</source>
        <translation>Dieser Lauf wird angezweifelt: lesen, warum. Was tun Sie?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>The program doubts this run: a beat of {0} s swings its phase. What do you do?</source>
        <translation>Das Programm zweifelt an diesem Lauf: eine Schwebung von {0} s bewegt seine Phase. Was tun Sie?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>{0} First measure the fan as it is: press here.</source>
        <translation>{0} Zuerst den Ventilator messen, wie er ist: hier drücken.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Watch the vectors: did they move at all?</source>
        <translation>Auf die Zeiger achten: haben sie sich überhaupt bewegt?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Measure what this trial mass does. Start as before.</source>
        <translation>Messen, was diese Testmasse bewirkt. Starten wie zuvor.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Take this trial mass off again.</source>
        <translation>Diese Testmasse wieder abnehmen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Now take the mass that is proposed: it is as heavy as is usual. Put it on the face.</source>
        <translation>Jetzt die vorgeschlagene Masse nehmen: sie ist so schwer wie üblich. Auf die Ansicht setzen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>See what the larger trial tells: go to Masses.</source>
        <translation>Sehen, was der größere Test sagt: zu Massen gehen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>See how sure the correction is now.</source>
        <translation>Sehen, wie sicher der Ausgleich jetzt ist.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Make it far too light on purpose: write {0} g, then press Enter.</source>
        <translation>Absichtlich viel zu leicht machen: {0} g schreiben, dann Eingabetaste drücken.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Take the trial mass that is proposed. Put it on the face.</source>
        <translation>Die vorgeschlagene Testmasse nehmen. Auf die Ansicht setzen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Record this light mass as put on.</source>
        <translation>Diese leichte Masse als angebracht protokollieren.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>See what the trial tells: go to Masses.</source>
        <translation>Sehen, was der Test sagt: zu Massen gehen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Look at the correction that would follow from it.</source>
        <translation>Den Ausgleich ansehen, der daraus folgen würde.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Look at mass, angle and what stands beside ±. How sure is this correction?</source>
        <translation>Masse, Winkel und den Wert hinter ± ansehen. Wie sicher ist dieser Ausgleich?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Look again: where an interval has no end, any mass would fit the runs. How sure is it?</source>
        <translation>Noch einmal ansehen: wo ein Bereich kein Ende hat, passt jede Masse zu den Läufen. Wie sicher ist er?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>{0} Measure it as it is: press here.</source>
        <translation>{0} Messen, wie er ist: hier drücken.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>See what is left after one plane. Start as before.</source>
        <translation>Sehen, was nach einer Ebene bleibt. Starten wie zuvor.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Watch each bearing: which one is left with more?</source>
        <translation>Auf jedes Lager achten: an welchem bleibt mehr?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>Now judge: hold each bearing against its limit.</source>
        <translation>Jetzt urteilen: jedes Lager mit seinem Grenzwert vergleichen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/lessons_plans.py"/>
        <source>One plane took the static part. A bearing whose interval lies above its limit shows a couple. What do you see?</source>
        <translation>Eine Ebene hat den statischen Anteil beseitigt. Ein Lager, dessen Bereich über dem Grenzwert liegt, zeigt eine Momentenunwucht. Was sehen Sie?</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Jobs</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Trend</source>
        <translation>Trend</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Two side by side</source>
        <translation>Zwei nebeneinander</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Machines: past jobs, trends and comparisons</source>
        <translation>Maschinen: frühere Aufträge, Trends und Vergleiche</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Machines</source>
        <translation>Maschinen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Search names, places, notes</source>
        <translation>Namen, Orte, Notizen durchsuchen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>fan, hall 3, …</source>
        <translation>Ventilator, Halle 3, …</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Folder of jobs…</source>
        <translation>Ordner der Aufträge…</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Choose the folder whose jobs are listed</source>
        <translation>Ordner wählen, dessen Aufträge gezeigt werden</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Read again</source>
        <translation>Neu lesen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Jobs of the machine</source>
        <translation>Aufträge der Maschine</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Open this job</source>
        <translation>Diesen Auftrag öffnen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Begin a job with this one's brief, hook-up and coefficients</source>
        <translation>Auftrag mit Aufgabe, Anschluss und Koeffizienten von diesem anlegen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>looking for jobs</source>
        <translation>Aufträge werden gesucht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>another list is wanted</source>
        <translation>eine andere Liste ist gewünscht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Reading {0}: {1}{2}</source>
        <translation>Lese {0}: {1}{2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>searching jobs</source>
        <translation>Suche in Aufträgen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Jobs in {0}</source>
        <translation>Aufträge in {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source> And {0} more.</source>
        <translation> Und {0} weitere.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Not read: {0}.{1}</source>
        <translation>Nicht gelesen: {0}.{1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>No machine to show in {0}.</source>
        <translation>Keine Maschine in {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>{0} machine, {1} jobs in {2}</source>
        <translation>{0} Maschine, {1} Aufträge in {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>{0} machines, {1} jobs in {2}</source>
        <translation>{0} Maschinen, {1} Aufträge in {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>{0}; the first {1} are listed: search for others.</source>
        <translation>{0}; gezeigt sind die ersten {1}: nach anderen suchen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Folder of jobs</source>
        <translation>Ordner der Aufträge</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Open shapes: first run of a job; full ones: its last run. Bars: 95 % interval of the run.</source>
        <translation>Offene Formen: erster Lauf eines Auftrags; volle: sein letzter. Balken: 95-%-Bereich des Laufs.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>No run that counts in its jobs.</source>
        <translation>In den Aufträgen zählt kein Lauf.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Earlier job</source>
        <translation>Früherer Auftrag</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Later job</source>
        <translation>Späterer Auftrag</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>choose a job</source>
        <translation>Auftrag wählen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Only one job: nothing to hold it against.</source>
        <translation>Nur ein Auftrag: nichts zum Vergleichen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>Choose two jobs.</source>
        <translation>Zwei Aufträge wählen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>{0}: {1} from last run to last run</source>
        <translation>{0}: {1} von letztem Lauf zu letztem Lauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>not measured</source>
        <translation>nicht gemessen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>First run {0}
Last run {1}
{2}</source>
        <translation>Erster Lauf {0}
Letzter Lauf {1}
{2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>First run {0}
Last run {1}
Change {2}</source>
        <translation>Erster Lauf {0}
Letzter Lauf {1}
Änderung {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_page.py"/>
        <source>{0} from last run to last run</source>
        <translation>{0} von letztem zu letztem Lauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_plot.py"/>
        <source>date of the run</source>
        <translation>Datum des Laufs</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_plot.py"/>
        <source>Trend of {0}</source>
        <translation>Trend von {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_plot.py"/>
        <source>{0}, then {1} {2}</source>
        <translation>{0}, dann {1} {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_plot.py"/>
        <source>no readings</source>
        <translation>keine Messwerte</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_text.py"/>
        <source>{0} (job; no machine named)</source>
        <translation>{0} (Auftrag; keine Maschine genannt)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_text.py"/>
        <source>no date</source>
        <translation>kein Datum</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_text.py"/>
        <source>{0} of {1} runs count</source>
        <translation>{0} von {1} Läufen zählen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_text.py"/>
        <source>Place</source>
        <translation>Ort</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_text.py"/>
        <source>Serial</source>
        <translation>Seriennummer</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_text.py"/>
        <source>Influence coefficients at {0} r/min</source>
        <translation>Einflusskoeffizienten bei {0} r/min</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_text.py"/>
        <source>not in both</source>
        <translation>nicht in beiden</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_text.py"/>
        <source>times as much</source>
        <translation>mal so viel</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/machines_text.py"/>
        <source>a job that names no machine</source>
        <translation>ein Auftrag, der keine Maschine nennt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_after.py"/>
        <source>Add the note</source>
        <translation>Notiz hinzufügen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_after.py"/>
        <source>Note trial masses that were taken off as weighed back in</source>
        <translation>Abgenommene Testmassen als zurückgewogen notieren</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_after.py"/>
        <source>Once hands are out</source>
        <translation>Sobald keine Hand mehr drin ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_after.py"/>
        <source>Photos of the pieces that are on</source>
        <translation>Fotos der Stücke, die sitzen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_after.py"/>
        <source>Weighed back in</source>
        <translation>Zurückgewogen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_after.py"/>
        <source>photos of the pieces on the rotor</source>
        <translation>Fotos der Stücke auf dem Rotor</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_after.py"/>
        <source>such as: all there, 12.0 g</source>
        <translation>z. B.: alle da, 12.0 g</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_after.py"/>
        <source>Taken off, and not noted as weighed back in: {0}.</source>
        <translation>Abgenommen und nicht als zurückgewogen notiert: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_after.py"/>
        <source>Write what weighing told first.</source>
        <translation>Erst schreiben, was die Wägung ergab.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_after.py"/>
        <source>What stays on the rotor</source>
        <translation>Was auf dem Rotor bleibt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_after.py"/>
        <source>How to go on</source>
        <translation>Wie es weitergeht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_after.py"/>
        <source>The job is closed: no mass is put on or taken off in it. The next visit is a job of its own that takes over brief, hook-up and coefficients. It begins with a look for missing pieces and an initial run.</source>
        <translation>Der Auftrag ist abgeschlossen: in ihm wird keine Masse mehr angebracht oder abgenommen. Der nächste Einsatz ist ein eigener Auftrag, der Aufgabe, Anschluss und Koeffizienten übernimmt. Er beginnt mit der Suche nach fehlenden Stücken und einem Urlauf.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_after.py"/>
        <source>Begin a job with brief, hook-up and coefficients of this one</source>
        <translation>Einen Auftrag mit Aufgabe, Anschluss und Koeffizienten dieses Auftrags beginnen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_after.py"/>
        <source>Go to Close-&amp;out</source>
        <translation>Zum Abschl&amp;uss</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_after.py"/>
        <source>Its report, and how it is opened again</source>
        <translation>Sein Bericht, und wie er wieder geöffnet wird</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>each plane</source>
        <translation>jede Ebene</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>static part</source>
        <translation>statischer Anteil</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Trial mass</source>
        <translation>Testmasse</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Try it on the &amp;face</source>
        <translation>Auf der Ansi&amp;cht versuchen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Put the trial mass on the face to look at</source>
        <translation>Testmasse zur Ansicht auf den Rotor setzen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>any angle</source>
        <translation>beliebiger Winkel</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>on {0}: {1} at speed</source>
        <translation>in {0}: {1} bei Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>{0}: {1} expected, {2} at the worst angle</source>
        <translation>{0}: {1} erwartet, {2} beim ungünstigsten Winkel</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>, stop at {0}</source>
        <translation>, abstellen bei {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>{0}: {1} at {2}{3}</source>
        <translation>{0}: {1} bei {2}{3}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>radius {0} mm, </source>
        <translation>Radius {0} mm, </translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>{0} at speed</source>
        <translation>{0} bei Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>not determined; {0}</source>
        <translation>nicht bestimmt; {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Correction</source>
        <translation>Ausgleich</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Correction counts from</source>
        <translation>Ausgleich zählt ab</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>What is corrected</source>
        <translation>Was ausgeglichen wird</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Put the correction on the face to look at</source>
        <translation>Ausgleich zur Ansicht auf den Rotor setzen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>&amp;Keep as plan</source>
        <translation>Als &amp;Plan behalten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Write this correction into the record of the job</source>
        <translation>Diesen Ausgleich ins Protokoll des Auftrags schreiben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>What is on now was not on in the last run: take a run with it first</source>
        <translation>Was jetzt sitzt, saß im letzten Lauf noch nicht: erst einen Lauf damit machen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>May take mass</source>
        <translation>Darf Masse tragen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Points that count</source>
        <translation>Messpunkte, die zählen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Method {0}; {1}.</source>
        <translation>Verfahren {0}; {1}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>the file does not</source>
        <translation>die Datei nicht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>the brief does not</source>
        <translation>die Aufgabe nicht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>the planes cannot be told apart</source>
        <translation>die Ebenen sind nicht zu trennen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>the planes are told apart well</source>
        <translation>die Ebenen sind gut zu trennen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>the planes do much the same: errors grow</source>
        <translation>die Ebenen wirken fast gleich: Fehler wachsen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>condition number {0}, {1}</source>
        <translation>Konditionszahl {0}, {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>condition number {0}, one plane</source>
        <translation>Konditionszahl {0}, eine Ebene</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>one plane</source>
        <translation>eine Ebene</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Expected vibration</source>
        <translation>Erwartete Schwingung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>{0}: {1} {2} expected, below {3} with 95 percent, {4} in the last run, {5}</source>
        <translation>{0}: {1} {2} erwartet, unter {3} mit 95 Prozent, {4} im letzten Lauf, {5}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>no runs to tell it from</source>
        <translation>keine Läufe, aus denen es folgt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>last run {0}</source>
        <translation>letzter Lauf {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Needs an initial run and a trial run for each plane</source>
        <translation>Braucht einen Urlauf und je Ebene einen Testlauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>{0} {1} expected, 95 %: below {2}</source>
        <translation>{0} {1} erwartet, 95 %: unter {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>below the limit with 95 %</source>
        <translation>unter dem Grenzwert mit 95 %</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>above the limit</source>
        <translation>über dem Grenzwert</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Before hands go in</source>
        <translation>Vor dem Handanlegen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>&amp;Who says so</source>
        <translation>Wer da&amp;s sagt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>All of it &amp;holds</source>
        <translation>Alles &amp;gilt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Write into the record that this was seen to</source>
        <translation>Ins Protokoll schreiben, dass dafür gesorgt ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Yes</source>
        <translation>Ja</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Yes: {0}</source>
        <translation>Ja: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>{0} of {1} are not answered yet: see to each, then press its Yes.</source>
        <translation>{0} von {1} sind noch offen: für jedes sorgen, dann Ja drücken.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Write who says so.</source>
        <translation>Angeben, wer das sagt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Try &amp;half of it</source>
        <translation>&amp;Hälfte versuchen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>Put half the correction on the face: it tests the stored coefficients</source>
        <translation>Den halben Ausgleich auf die Ansicht setzen: er prüft die gespeicherten Koeffizienten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>by influence coefficients stored on an earlier visit</source>
        <translation>mit Einflusskoeffizienten von einem früheren Einsatz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>at any angle</source>
        <translation>bei beliebigem Winkel</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>{0}: {1} {2} in the last run, {3}</source>
        <translation>{0}: {1} {2} im letzten Lauf, {3}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>{0} {1} in the last run</source>
        <translation>{0} {1} im letzten Lauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>least squares</source>
        <translation>kleinste Quadrate</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>least residual to be expected</source>
        <translation>kleinster zu erwartender Rest</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_cards.py"/>
        <source>least largest residual</source>
        <translation>kleinster größter Rest</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>ground off</source>
        <translation>abgeschliffen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>The chosen piece</source>
        <translation>Das gewählte Stück</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Go through the cautions</source>
        <translation>Vorsichtsregeln durchgehen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>What must hold before hands go in</source>
        <translation>Was gelten muss, bevor Hand angelegt wird</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Add a piece, or try a suggestion on the face; then choose it.</source>
        <translation>Stück hinzufügen oder einen Vorschlag auf der Ansicht versuchen; dann wählen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Fixing</source>
        <translation>Befestigung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>such as 12.5 g</source>
        <translation>z. B. 12.5 g</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Angle or position</source>
        <translation>Winkel oder Stelle</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>such as 137 or position 5</source>
        <translation>z. B. 137 oder position 5</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>as the plane's</source>
        <translation>wie die Ebene</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Filler, nuts, washers</source>
        <translation>Schweißgut, Muttern, Scheiben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>such as 0.6 g</source>
        <translation>z. B. 0.6 g</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Put on as</source>
        <translation>Angebracht als</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Note, such as who weighed it</source>
        <translation>Notiz, etwa wer gewogen hat</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Note on what was put on</source>
        <translation>Notiz zum Angebrachten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>&amp;Record as put on</source>
        <translation>Als angebracht pr&amp;otokollieren</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Write all pieces thought of into the record</source>
        <translation>Alle geplanten Stücke ins Protokoll schreiben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>&amp;Record where it really sits</source>
        <translation>Wirklichen Platz pr&amp;otokollieren</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>{0} at speed.</source>
        <translation>{0} bei Drehzahl.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>0 g is no mass; remove the piece instead</source>
        <translation>0 g ist keine Masse; statt dessen das Stück entfernen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>filler metal</source>
        <translation>Schweißgut</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>On the rotor</source>
        <translation>Auf dem Rotor</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Nothing beyond its initial state.</source>
        <translation>Nichts über den Urzustand hinaus.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Thought of</source>
        <translation>Geplant</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Nothing yet.</source>
        <translation>Noch nichts.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>take off</source>
        <translation>abnehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>&amp;Take off</source>
        <translation>Ab&amp;nehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Record that the chosen piece was taken off</source>
        <translation>Protokollieren, dass das gewählte Stück abgenommen wurde</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>sits elsewhere</source>
        <translation>sitzt anders</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Sits &amp;elsewhere</source>
        <translation>Sitzt and&amp;ers</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Say where the chosen piece really sits</source>
        <translation>Sagen, wo das gewählte Stück wirklich sitzt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>trials off</source>
        <translation>Testmassen ab</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>All trial masses off</source>
        <translation>Alle Testmassen ab</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Record that every trial mass was taken off</source>
        <translation>Protokollieren, dass alle Testmassen abgenommen wurden</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>&amp;Add a piece</source>
        <translation>S&amp;tück hinzufügen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Think of another piece on this plane</source>
        <translation>Ein weiteres Stück in dieser Ebene planen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Think of the chosen piece no more</source>
        <translation>Das gewählte Stück nicht mehr planen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>bring back</source>
        <translation>zurückholen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Bring back</source>
        <translation>Zurückholen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Think of the piece again that was removed last</source>
        <translation>Das zuletzt entfernte Stück wieder planen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>such as: weighed back in</source>
        <translation>z. B.: zurückgewogen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_entry.py"/>
        <source>Note on taking off</source>
        <translation>Notiz zum Abnehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_face.py"/>
        <source>Rotor face with pieces</source>
        <translation>Rotoransicht mit Stücken</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_face.py"/>
        <source>, chosen</source>
        <translation>, gewählt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_face.py"/>
        <source>piece {0}{1}: {2}</source>
        <translation>Stück {0}{1}: {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_field.py"/>
        <source>; {0} is kept</source>
        <translation>; {0} bleibt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>with rotation</source>
        <translation>mit Drehsinn</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>Drill diameter</source>
        <translation>Bohrerdurchmesser</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>such as 12 mm</source>
        <translation>z. B. 12 mm</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>Metal</source>
        <translation>Metall</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>such as steel</source>
        <translation>z. B. Stahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>Area ground off</source>
        <translation>Geschliffene Fläche</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>such as 20 cm^2</source>
        <translation>z. B. 20 cm^2</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>Rod diameter</source>
        <translation>Elektrodendurchmesser</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>such as 3.2 mm</source>
        <translation>z. B. 3.2 mm</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>Metal that lands</source>
        <translation>Metall, das ankommt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>such as 90 %</source>
        <translation>z. B. 90 %</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>At another radius</source>
        <translation>Auf anderem Radius</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>such as 250 mm</source>
        <translation>z. B. 250 mm</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>Split to two angles</source>
        <translation>Auf zwei Winkel teilen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>such as 300 and 330</source>
        <translation>z. B. 300 und 330</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>Split between positions</source>
        <translation>Auf Stellen teilen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>Two pieces at the positions on either side</source>
        <translation>Zwei Stücke auf die Stellen zu beiden Seiten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>Make one of them</source>
        <translation>Eins daraus machen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>One piece for those thought of on this plane</source>
        <translation>Ein Stück für alle geplanten in dieser Ebene</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>From the mark {0}: {1} mm along the rim, {2} mm straight across, at radius {3} mm.</source>
        <translation>Ab der Marke {0}: {1} mm am Umfang, {2} mm gerade gemessen, auf Radius {3} mm.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>{0} mm off, evenly over the area</source>
        <translation>{0} mm abtragen, gleichmäßig über die Fläche</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>drill to {0} mm at the tip, {1} mm full diameter (118° point)</source>
        <translation>{0} mm tief bohren bis zur Spitze, {1} mm voller Durchmesser (Spitze 118°)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>"{0}" is no share: write such as 90 %</source>
        <translation>„{0}“ ist kein Anteil: etwa 90 % schreiben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>"{0}" is not two angles: write such as 300 and 330</source>
        <translation>„{0}“ sind nicht zwei Winkel: etwa 300 und 330 schreiben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>{0} mm of rod</source>
        <translation>{0} mm Elektrode</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>as hooked up</source>
        <translation>wie erfasst</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>all masses off</source>
        <translation>alle Massen ab</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>added to what is on</source>
        <translation>zu dem, was sitzt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>{0} g and {1} g of filler metal</source>
        <translation>{0} g und {1} g Schweißgut</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>no limit agreed</source>
        <translation>kein Grenzwert vereinbart</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>may be above the limit</source>
        <translation>vielleicht über dem Grenzwert</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>"{0}" is no {1}: write such as 12.5 g or 0.4 oz, below 0 for metal taken away</source>
        <translation>„{0}“ ist kein Wert für {1}: etwa 12.5 g oder 0.4 oz schreiben, unter 0 für abgetragenes Metall</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>"{0}" is no {1}: write such as 290 mm or 11.4 in, above 0</source>
        <translation>„{0}“ ist kein Wert für {1}: etwa 290 mm oder 11.4 in schreiben, größer als 0</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>, or "position 1" to "position {0}"</source>
        <translation>, oder „position 1“ bis „position {0}“</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>"{0}" is no place: write an angle such as 137°{1}</source>
        <translation>„{0}“ ist kein Platz: einen Winkel wie 137° schreiben{1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>{0} has no numbered positions: write an angle such as 137°</source>
        <translation>{0} hat keine nummerierten Stellen: einen Winkel wie 137° schreiben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>position "{0}" does not exist on {1}: there are 1 to {2}</source>
        <translation>Stelle „{0}“ gibt es in {1} nicht: es gibt 1 bis {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>position {0} on {1} is blocked by the brief: choose another</source>
        <translation>Stelle {0} in {1} ist laut Aufgabe gesperrt: eine andere wählen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>force cannot be told: the brief says no speed or radius</source>
        <translation>Kraft nicht anzugeben: in der Aufgabe fehlt Drehzahl oder Radius</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>position {0} ({1}°)</source>
        <translation>Stelle {0} ({1}°)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source> + {0} g filler</source>
        <translation> + {0} g Schweißgut</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>, radius {0} mm</source>
        <translation>, Radius {0} mm</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>{0} g{1}{2} at {3}{4}{5}</source>
        <translation>{0} g{1}{2} bei {3}{4}{5}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>below the limit</source>
        <translation>unter dem Grenzwert</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_page.py"/>
        <source>Masses</source>
        <translation>Massen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_page.py"/>
        <source>P&amp;lacement sheet</source>
        <translation>P&amp;latzierblatt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_page.py"/>
        <source>For the person at the rotor: on paper or on a phone</source>
        <translation>Für die Person am Rotor: auf Papier oder auf dem Telefon</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_page.py"/>
        <source>broken off.</source>
        <translation>abgebrochen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_page.py"/>
        <source>placement sheet</source>
        <translation>Platzierblatt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_page.py"/>
        <source>Before hands go in: nobody has said since the last start that the cautions hold.</source>
        <translation>Vor dem Handanlegen: seit dem letzten Start hat niemand gesagt, dass die Vorsichtsregeln gelten.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_page.py"/>
        <source>Correction: {0}.</source>
        <translation>Ausgleich: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_page.py"/>
        <source>the stock is empty: write what is at hand, such as 2 g x 6, 5 g x 4.</source>
        <translation>der Vorrat ist leer: schreiben, was da ist, etwa 2 g x 6, 5 g x 4.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_page.py"/>
        <source>it is being worked out</source>
        <translation>es wird gerechnet</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>few and good</source>
        <translation>wenige und gut</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>least vibration</source>
        <translation>kleinste Schwingung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>within limits</source>
        <translation>unter den Grenzwerten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>Pieces from the stock</source>
        <translation>Stücke aus dem Vorrat</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>&amp;Stock at hand</source>
        <translation>&amp;Vorrat</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>What the pieces are to do</source>
        <translation>Was die Stücke erreichen sollen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>as it takes</source>
        <translation>nach Bedarf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>Pieces at &amp;most</source>
        <translation>Stücke &amp;höchstens</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>Find &amp;pieces</source>
        <translation>Stücke s&amp;uchen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>Search the stock for the least vibration</source>
        <translation>Im Vorrat nach der geringsten Schwingung suchen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>finding pieces</source>
        <translation>Stücke werden gesucht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>Try them on the &amp;face</source>
        <translation>Auf der Ansicht ver&amp;suchen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>Put the pieces on the face to look at</source>
        <translation>Stücke zur Ansicht auf den Rotor setzen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>&amp;Keep choice</source>
        <translation>Wahl &amp;behalten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>Write these pieces into the record of the job</source>
        <translation>Diese Stücke ins Protokoll des Auftrags schreiben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>of the limit</source>
        <translation>des Grenzwerts</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>{0} pieces: largest point {1} {2}</source>
        <translation>{0} Stücke: größter Messpunkt {1} {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>{0} piece: largest point {1} {2}</source>
        <translation>{0} Stück: größter Messpunkt {1} {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>proven to be the best of so many</source>
        <translation>bewiesen: besser geht es mit so vielen nicht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>none of so many is below {0}</source>
        <translation>mit so vielen geht es nicht unter {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>by number of pieces: {0} {1}; {2}</source>
        <translation>nach Anzahl der Stücke: {0} {1}; {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>the handbook's split takes {0} pieces and leaves {1} {2}</source>
        <translation>das Aufteilen nach Handbuch braucht {0} Stücke und lässt {1} {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>"{0}" is no piece: write what it weighs</source>
        <translation>„{0}“ ist kein Stück: schreiben, was es wiegt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>such as 2 g x 6, 5 g x 4</source>
        <translation>z. B. 2 g x 6, 5 g x 4</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>One piece fewer</source>
        <translation>Ein Stück weniger</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_pieces.py"/>
        <source>One piece more</source>
        <translation>Ein Stück mehr</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source>{0}:{1} o'clock</source>
        <translation>{0}:{1} Uhr</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source>clock face {0}</source>
        <translation>Zifferblatt {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source>{0} along the rim from the mark</source>
        <translation>{0} am Umfang ab der Marke</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source>force at speed {0}</source>
        <translation>Kraft bei Drehzahl {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source>sure to {0}</source>
        <translation>sicher auf {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source>{0}, continued</source>
        <translation>{0}, Fortsetzung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source>Stop: {0}</source>
        <translation>Abstellen: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source>Seen from {0}</source>
        <translation>Gesehen von: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source>it turns {0} {1}</source>
        <translation>er dreht {0} {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source>Drawn with the mark under the pulse sensor. Angles, position numbers and distances along the rim count from the mark, {0}.</source>
        <translation>Gezeichnet mit der Marke unter dem Impulssensor. Winkel, Nummern der Stellen und Wege am Umfang zählen ab der Marke, {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source>piece {0}: {1} at {2}</source>
        <translation>Stück {0}: {1} bei {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source>{0}, {1}, seen from {2}: {3}</source>
        <translation>{0}, {1}, gesehen von {2}: {3}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source>the {0} end</source>
        <translation>Ende „{0}“</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source> Crossed out: no mass may go there.</source>
        <translation> Durchgestrichen: dorthin darf keine Masse.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source>Drawn with the mark under the pulse sensor. Angles, position numbers and distances along the rim count from the mark, {0}.{1}</source>
        <translation>Gezeichnet mit der Marke unter dem Impulssensor. Winkel, Nummern der Stellen und Wege am Umfang zählen ab der Marke, {0}.{1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet.py"/>
        <source>{0}, {1}, seen from {2}</source>
        <translation>{0}, {1}, gesehen von: {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>Picture (*.png)</source>
        <translation>Bild (*.png)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>To be added to what is on</source>
        <translation>Zu dem hinzu, was sitzt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>To be put on, with all earlier masses taken off</source>
        <translation>Anzubringen, nachdem alle früheren Massen abgenommen sind</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>On the rotor, as recorded</source>
        <translation>Auf dem Rotor, wie protokolliert</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>nothing is on the rotor or thought of: try a suggestion on the face first</source>
        <translation>nichts sitzt auf dem Rotor oder ist geplant: erst einen Vorschlag auf der Ansicht versuchen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>mark or sensors were changed by an unknown turn: make sure of the mark before using these angles</source>
        <translation>Marke oder Sensoren wurden um einen unbekannten Winkel verdreht: vor diesen Winkeln die Marke klären</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>{0}, made {1} UTC</source>
        <translation>{0}, erstellt {1} UTC</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>Placement sheet</source>
        <translation>Platzierblatt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>Size</source>
        <translation>Größe</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>Phone</source>
        <translation>Telefon</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>P&amp;rint</source>
        <translation>Druc&amp;ken</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>Print the sheet on A4</source>
        <translation>Blatt auf A4 drucken</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>Save P&amp;DF</source>
        <translation>P&amp;DF speichern</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>Save the sheet for A4 as a PDF file</source>
        <translation>Blatt für A4 als PDF-Datei speichern</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>Save pictures</source>
        <translation>Bilder speichern</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>Save pictures of a phone's size</source>
        <translation>Bilder in Telefongröße speichern</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>&amp;Back</source>
        <translation>Zurück (&amp;B)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>Back to the rotor face</source>
        <translation>Zurück zur Rotoransicht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>{0}: cannot be written ({1}); choose another place.</source>
        <translation>{0}: nicht schreibbar ({1}); anderen Ort wählen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>Saved as {0}.</source>
        <translation>Gespeichert als {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>Save the sheet</source>
        <translation>Blatt speichern</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_sheet_card.py"/>
        <source>Sent to the printer.</source>
        <translation>An den Drucker gesandt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>Trial</source>
        <translation>Testmasse</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>Pieces</source>
        <translation>Stücke</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>Put on</source>
        <translation>Anbringen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>Cautions</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>Dark: on the rotor. Dashed: thought of; drag it, or use the arrow keys, + and −. Wedge: the correction, 95 %. Cross: blocked.</source>
        <translation>Dunkel: auf dem Rotor. Gestrichelt: geplant; ziehen, oder Pfeiltasten, + und −. Keil: der Ausgleich, 95 %. Kreuz: gesperrt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>No job is open, or its brief has no plane yet: begin on the Brief page.</source>
        <translation>Kein Auftrag ist offen, oder seine Aufgabe hat noch keine Ebene: auf der Seite Aufgabe beginnen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>with what is thought of</source>
        <translation>mit dem Geplanten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>{0} said since the last start that all of it holds.</source>
        <translation>{0} hat seit dem letzten Start gesagt, dass alles gilt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>{0} on the rotor, {1} thought of.</source>
        <translation>{0} auf dem Rotor, {1} geplant.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>before hands go in, go through the cautions: nobody has said since the last start that they hold.</source>
        <translation>vor dem Handanlegen die Vorsichtsregeln durchgehen: seit dem letzten Start hat niemand gesagt, dass sie gelten.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>{0}{1} g{2} at {3}{4}</source>
        <translation>{0}{1} g{2} bei {3}{4}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>{0} g{1} at {2}{3}</source>
        <translation>{0} g{1} bei {2}{3}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>, beside what is on</source>
        <translation>, zu dem hinzu, was sitzt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>, all earlier masses off</source>
        <translation>, alle früheren Massen ab</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>with what is thought of{0}</source>
        <translation>mit dem Geplanten{0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>Dark: on the rotor. Cross: blocked.</source>
        <translation>Dunkel: auf dem Rotor. Kreuz: gesperrt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>{0} on the rotor. The job is closed.</source>
        <translation>{0} auf dem Rotor. Der Auftrag ist abgeschlossen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>nothing is thought of yet</source>
        <translation>noch ist nichts geplant</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_view.py"/>
        <source>Vibration in the last run</source>
        <translation>Schwingung im letzten Lauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_work.py"/>
        <source>with stored coefficients only the whole correction is kept: choose each plane, and all planes and points</source>
        <translation>mit gespeicherten Koeffizienten wird nur der ganze Ausgleich behalten: „jede Ebene“ und alle Ebenen und Messpunkte wählen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/meters.py"/>
        <source>no signal yet</source>
        <translation>noch kein Signal</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/meters.py"/>
        <source>{0}, peak {1} dB of full scale</source>
        <translation>{0}, Spitze {1} dB zur Vollaussteuerung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/meters.py"/>
        <source>time, ms</source>
        <translation>Zeit, ms</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/meters.py"/>
        <source>pulse, % of full scale</source>
        <translation>Impuls, % der Vollaussteuerung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/meters.py"/>
        <source>rising edge</source>
        <translation>steigende Flanke</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/meters.py"/>
        <source>falling edge</source>
        <translation>fallende Flanke</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/meters.py"/>
        <source>mark {0}° wide</source>
        <translation>Marke {0}° breit</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/meters.py"/>
        <source>edges to {0}°</source>
        <translation>Flanken auf {0}°</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/meters.py"/>
        <source>{0} missing, {1} extra</source>
        <translation>{0} fehlen, {1} zu viel</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/meters.py"/>
        <source>threshold at {0} % of full scale</source>
        <translation>Schwelle bei {0} % der Vollaussteuerung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/open_job.py"/>
        <source>no job is open: begin one or open one on the Brief page</source>
        <translation>kein Auftrag ist offen: unter Aufgabe einen anlegen oder öffnen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/open_job.py"/>
        <source>what is next cannot be told: {0}</source>
        <translation>was als Nächstes kommt, ist nicht zu sagen: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/page.py"/>
        <source>This version of the program has no page for it.</source>
        <translation>Diese Version des Programms hat dafür keine Seite.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>time, s</source>
        <translation>Zeit, s</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>phase − mean, °</source>
        <translation>Phase − Mittel, °</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>Phase ribbon</source>
        <translation>Phasenband</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>{0}: {1}, within {2} to {3} degrees of its mean</source>
        <translation>{0}: {1}, innerhalb {2} bis {3} Grad um das Mittel</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>no phase yet</source>
        <translation>noch keine Phase</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>shaft angle, °</source>
        <translation>Wellenwinkel, °</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>Waveform over one revolution</source>
        <translation>Verlauf über eine Umdrehung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>no waveform yet</source>
        <translation>noch kein Verlauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>{0}, ± one deviation</source>
        <translation>{0}, ± eine Abweichung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>{0} from {1} to {2} {3}</source>
        <translation>{0} von {1} bis {2} {3}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>mean of {0} revolutions: </source>
        <translation>Mittel aus {0} Umdrehungen: </translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>frequency, Hz</source>
        <translation>Frequenz, Hz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>Spectrum</source>
        <translation>Spektrum</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>no spectrum yet</source>
        <translation>noch kein Spektrum</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>{0}: highest at {1} Hz, {2} {3}</source>
        <translation>{0}: höchster Wert bei {1} Hz, {2} {3}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>speed, r/min</source>
        <translation>Drehzahl, r/min</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>Phase against speed</source>
        <translation>Phase über der Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>Amplitude against speed</source>
        <translation>Amplitude über der Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>lag, °</source>
        <translation>Nacheilung, °</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>no sweep yet</source>
        <translation>noch kein Durchlauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>resonance at {0} r/min</source>
        <translation>Resonanz bei {0} r/min</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>no resonance seen</source>
        <translation>keine Resonanz zu sehen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>, limit {0}</source>
        <translation>, Grenzwert {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>{0} from {1} to {2} {3}{4}: {5}</source>
        <translation>{0} von {1} auf {2} {3}{4}: {5}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/plots.py"/>
        <source>no check run yet</source>
        <translation>noch kein Kontrolllauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/polar.py"/>
        <source>Vector cloud</source>
        <translation>Zeigerwolke</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/polar.py"/>
        <source>Vectors through the speed</source>
        <translation>Zeiger über der Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/polar.py"/>
        <source>{0} from {1} to {2} r/min, up to {3} {4}</source>
        <translation>{0} von {1} bis {2} r/min, bis {3} {4}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rail.py"/>
        <source>Stages of the job</source>
        <translation>Schritte des Auftrags</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_face.py"/>
        <source>no rotor yet</source>
        <translation>noch kein Rotor</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_face.py"/>
        <source>no hook-up yet</source>
        <translation>noch kein Anschluss</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_face.py"/>
        <source>seen from: {0} · turns {1} · angles {2}</source>
        <translation>gesehen von: {0} · dreht {1} · Winkel {2}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_face.py"/>
        <source>seen from: {0} · angles {1}</source>
        <translation>gesehen von: {0} · Winkel {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_face.py"/>
        <source>pulse, mark 0°</source>
        <translation>Impuls, Marke 0°</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>set below</source>
        <translation>wie unten gesetzt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>&amp;Case</source>
        <translation>&amp;Fall</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>Speed</source>
        <translation>Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>Resonance in percent of running speed</source>
        <translation>Resonanz in Prozent der Betriebsdrehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source> % of speed</source>
        <translation> % der Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>left as it is</source>
        <translation>bleibt, wie sie ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>Neighbour beside running speed</source>
        <translation>Nachbar neben der Betriebsdrehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>Vibration from the neighbour</source>
        <translation>Schwingung vom Nachbarn</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>Pulses that are missing</source>
        <translation>Fehlende Impulse</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>Jitter of the pulses</source>
        <translation>Zittern der Impulse</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>Noise</source>
        <translation>Rauschen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>Spee&amp;d</source>
        <translation>Dre&amp;hzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>Resona&amp;nce</source>
        <translation>Reso&amp;nanz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>Neigh&amp;bour</source>
        <translation>Nach&amp;bar</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>Pulses &amp;lost</source>
        <translation>Feh&amp;limpulse</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>Noi&amp;se</source>
        <translation>Rau&amp;schen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>Unbalance</source>
        <translation>Unwucht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>{0}, {1}, mass</source>
        <translation>{0}, {1}, Masse</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>{0}, {1}, angle</source>
        <translation>{0}, {1}, Winkel</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>Angles run against rotation from the mark. The rotor starts anew with what is applied.</source>
        <translation>Winkel zählen ab der Marke gegen den Drehsinn. Der Rotor beginnt mit dem Angewandten von vorn.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>&amp;Apply</source>
        <translation>Anwenden (&amp;O)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rotor_panel.py"/>
        <source>Run the simulated rotor so</source>
        <translation>Den simulierten Rotor so laufen lassen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_taker.py"/>
        <source>no source runs: start it first</source>
        <translation>keine Quelle läuft: erst starten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_taker.py"/>
        <source>run "{0}": is there already; give it another name</source>
        <translation>Lauf „{0}“ gibt es schon; einen anderen Namen geben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_taker.py"/>
        <source>closing the recording</source>
        <translation>Aufnahme wird geschlossen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_taker.py"/>
        <source>the source was stopped before the run began</source>
        <translation>die Quelle wurde angehalten, bevor der Lauf begann</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_taker.py"/>
        <source>{0}; {1} s are kept as {2}, marked incomplete</source>
        <translation>{0}; {1} s liegen als {2} vor, als unvollständig vermerkt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_taker.py"/>
        <source>recording, {0} s</source>
        <translation>nimmt auf, {0} s</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_taker.py"/>
        <source>the source was stopped</source>
        <translation>die Quelle wurde angehalten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_taker.py"/>
        <source>{0}; what was recorded is kept as {1}, marked incomplete</source>
        <translation>{0}; das Aufgenommene liegt als {1} vor, als unvollständig vermerkt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_taker.py"/>
        <source>{0} is at {1} {2}; the abort level is {3} {4}.</source>
        <translation>{0} ist bei {1} {2}; der Abschaltpegel ist {3} {4}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_taker.py"/>
        <source>plane "{0}".radius</source>
        <translation>Radius der Ebene „{0}“</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>second source</source>
        <translation>zweite Quelle</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>strong second source</source>
        <translation>starke zweite Quelle</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>too short to tell</source>
        <translation>zu kurz für ein Urteil</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>no pulses yet</source>
        <translation>noch keine Impulse</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>60000.0 to 60000.0</source>
        <translation>60000.0 bis 60000.0</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>9999 revolutions in 99 s</source>
        <translation>9999 Umdrehungen in 99 s</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>no speed</source>
        <translation>keine Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>{0} revolutions in {1} s</source>
        <translation>{0} Umdrehungen in {1} s</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>Speed {0} revolutions per minute</source>
        <translation>Drehzahl {0} Umdrehungen je Minute</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>± 00.000 mm/s peak</source>
        <translation>± 00.000 mm/s peak</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>no figures yet</source>
        <translation>noch keine Werte</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>{0}, within {1}°</source>
        <translation>{0}, innerhalb {1}°</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>0° up, lag against rotation</source>
        <translation>0° oben, gegen den Drehsinn</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>Waveform</source>
        <translation>Verlauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>Spectr&amp;um</source>
        <translation>Spektr&amp;um</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>Show the spectrum</source>
        <translation>Spektrum zeigen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>Waveform (&amp;U)</source>
        <translation>Verla&amp;uf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>Show the waveform</source>
        <translation>Verlauf zeigen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>without it 000.000 ± 0.000 at 000.0° ± 0.0°</source>
        <translation>ohne sie 000.000 ± 0.000 bei 000.0° ± 0.0°</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>without it {0} {1} at {2}° {3}°</source>
        <translation>ohne sie {0} {1} bei {2}° {3}°</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/run_watch.py"/>
        <source>without it {0} {1}, phase not determined</source>
        <translation>ohne sie {0} {1}, Phase nicht bestimmt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>when I end it</source>
        <translation>wenn ich ihn beende</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>at ± 2 % and ± 1°</source>
        <translation>bei ± 2 % und ± 1°</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>at ± 1 % and ± 0.5°</source>
        <translation>bei ± 1 % und ± 0.5°</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>at ± 5 % and ± 3°</source>
        <translation>bei ± 5 % und ± 3°</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>after 30 s</source>
        <translation>nach 30 s</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>after 60 s</source>
        <translation>nach 60 s</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>after 120 s</source>
        <translation>nach 120 s</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>as the job stands</source>
        <translation>nach Stand des Auftrags</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>{0}: "{1}" is not a number</source>
        <translation>{0}: „{1}“ ist keine Zahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>Next run</source>
        <translation>Nächster Lauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>by its kind</source>
        <translation>nach seiner Art</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>Minutes since the start</source>
        <translation>Minuten seit dem Start</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>where settling counts</source>
        <translation>wo Einlaufen zählt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>It ends</source>
        <translation>Er endet</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>On the rotor: {0}.</source>
        <translation>Auf dem Rotor: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>as it is now</source>
        <translation>wie er jetzt ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>minutes since the start</source>
        <translation>Minuten seit dem Start</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>Before the start</source>
        <translation>Vor dem Start</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>All of it &amp;holds: start</source>
        <translation>Alles &amp;gilt: starten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>All of it holds: start</source>
        <translation>Alles gilt: starten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>It runs &amp;already</source>
        <translation>Läuft s&amp;chon</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>Measure a machine that is not started now</source>
        <translation>Eine Maschine messen, die jetzt nicht gestartet wird</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>How far the run is</source>
        <translation>Wie weit der Lauf ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>&amp;Record run</source>
        <translation>&amp;Lauf aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>Record a run from now on</source>
        <translation>Von jetzt an einen Lauf aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>&amp;End run</source>
        <translation>Lauf b&amp;eenden</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>It is enough: measure what was recorded</source>
        <translation>Es genügt: das Aufgenommene auswerten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>Break &amp;off</source>
        <translation>A&amp;bbrechen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>No run is made of it; the recording is kept</source>
        <translation>Es wird kein Lauf daraus; die Aufnahme bleibt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>Wait until sett&amp;led</source>
        <translation>Einlaufen abwarten (&amp;J)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>not noted</source>
        <translation>nicht vermerkt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_next.py"/>
        <source>Temperature of the machine</source>
        <translation>Temperatur der Maschine</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>Runs</source>
        <translation>Läufe</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>Live</source>
        <translation>Live</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>Runs taken</source>
        <translation>Bisherige Läufe</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>Sweep</source>
        <translation>Hoch-/Auslauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>What is shown</source>
        <translation>Was gezeigt wird</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>{0}, {1}. ± is the 95 % interval of this run only.</source>
        <translation>{0}, {1}. ± ist der 95-%-Bereich nur dieses Laufs.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>the recording could not be played</source>
        <translation>die Aufnahme ließ sich nicht abspielen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>A recording is played again: nothing is recorded.</source>
        <translation>Eine Aufnahme wird wieder abgespielt: nichts wird aufgenommen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>The source went away: it is waited for. The machine may be running.</source>
        <translation>Die Quelle ist weg: sie wird erwartet. Die Maschine kann laufen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>{0}Start the machine when what must hold before a start holds.</source>
        <translation>{0}Die Maschine starten, wenn gilt, was vor einem Start gelten muss.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>{0}The source runs. See to what must hold before a start, then record.</source>
        <translation>{0}Die Quelle läuft. Für das sorgen, was vor einem Start gelten muss, dann aufnehmen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>{0}The machine runs until you stop it.</source>
        <translation>{0}Die Maschine läuft, bis Sie sie abstellen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>does not count</source>
        <translation>zählt nicht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>Run "{0}" {1}. </source>
        <translation>Lauf „{0}“ {1}. </translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>No run: {0}.</source>
        <translation>Kein Lauf: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>Speed and phase are steady: these figures settle.</source>
        <translation>Drehzahl und Phase sind stabil: diese Werte beruhigen sich.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>The figures settle: let it run a little longer.</source>
        <translation>Die Werte beruhigen sich: noch etwas laufen lassen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>it would take {0} s</source>
        <translation>das würde {0} s dauern</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>its scatter has no bound yet</source>
        <translation>ihre Streuung hat noch keine Schranke</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>; what is wanted is not reached within {0} s: {1}</source>
        <translation>; das Gewünschte wird in {0} s nicht erreicht: {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>, {0} s to go</source>
        <translation>, noch {0} s</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>The wait was ended: {0}.</source>
        <translation>Das Warten wurde beendet: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>The source does not run: {0}.</source>
        <translation>Die Quelle läuft nicht: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>{0}{1}The machine runs until you stop it.</source>
        <translation>{0}{1}Die Maschine läuft, bis Sie sie abstellen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>; it waits for {0}</source>
        <translation>; wartet auf {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>The job {0}; no run is taken.</source>
        <translation>Der Auftrag {0}; kein Lauf wird aufgenommen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>is closed: reopen it on Close-out</source>
        <translation>ist abgeschlossen: unter Abschluss wieder öffnen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>can only be read</source>
        <translation>ist nur zum Lesen offen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>{0}. The source is waited for: it goes on by itself once it is back.</source>
        <translation>{0}. Auf die Quelle wird gewartet: Es geht von selbst weiter, sobald sie wieder da ist.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_settling.py"/>
        <source>Record when 1x moves less than 2 % and 2° in five minutes</source>
        <translation>Aufnehmen, wenn 1x sich in fünf Minuten weniger als 2 % und 2° bewegt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_settling.py"/>
        <source>Why it is not waited for</source>
        <translation>Warum nicht gewartet wird</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_settling.py"/>
        <source>Watching whether 1x settles: its first vectors come in a few seconds.</source>
        <translation>Beobachtet, ob 1x einläuft: die ersten Zeiger kommen in wenigen Sekunden.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_settling.py"/>
        <source>{0} min since the start, as for "{1}".</source>
        <translation>{0} min seit dem Start, wie bei „{1}“.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_settling.py"/>
        <source> Or {0} min more, until it ran as long as for "{1}".</source>
        <translation> Oder noch {0} min, bis sie so lange lief wie bei „{1}“.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_settling.py"/>
        <source>End the wa&amp;it</source>
        <translation>Warten beenden (&amp;J)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_settling.py"/>
        <source>Record now, with the reason</source>
        <translation>Jetzt aufnehmen, mit dem Grund</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_sweep.py"/>
        <source>How far the sweep is</source>
        <translation>Wie weit der Durchlauf ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_sweep.py"/>
        <source>&amp;Record a sweep</source>
        <translation>&amp;Hoch-/Auslauf aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_sweep.py"/>
        <source>Run up or coast down now</source>
        <translation>Jetzt hochlaufen oder auslaufen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_sweep.py"/>
        <source>A run-up or coast-down that was recorded before</source>
        <translation>Ein früher aufgenommener Hochlauf oder Auslauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_sweep.py"/>
        <source>No run-up or coast-down is recorded yet. Press, then run up, or switch off and let it coast down.</source>
        <translation>Noch kein Hochlauf oder Auslauf protokolliert. Drücken, dann hochfahren, oder abschalten und auslaufen lassen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_sweep.py"/>
        <source>{0}, entry {1}. </source>
        <translation>{0}, Eintrag {1}. </translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_sweep.py"/>
        <source>No resonance was found.</source>
        <translation>Keine Resonanz gefunden.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_sweep.py"/>
        <source>Margin to the next resonance {0} %.</source>
        <translation>Abstand zur nächsten Resonanz {0} %.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_sweep.py"/>
        <source> Not to be trusted: {0}.</source>
        <translation> Nicht verlässlich: {0}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_sweep.py"/>
        <source>No run-up or coast-down is recorded yet.</source>
        <translation>Noch kein Hoch- oder Auslauf aufgenommen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source> at {0}°</source>
        <translation> bei {0}°</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>{0} min since the start</source>
        <translation>{0} min seit dem Start</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>Re&amp;play</source>
        <translation>A&amp;bspielen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>Play its recording again on the Live view</source>
        <translation>Seine Aufnahme auf der Ansicht „Live“ wieder abspielen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>Reason</source>
        <translation>Grund</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>&amp;Use anyway</source>
        <translation>Trot&amp;zdem nutzen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>Let it count, with the reason</source>
        <translation>Zählen lassen, mit dem Grund</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>&amp;Leave out</source>
        <translation>We&amp;glassen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>It counts no longer, with the reason</source>
        <translation>Zählt nicht mehr, mit dem Grund</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>&amp;Make a run of it</source>
        <translation>&amp;Lauf daraus machen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>Measure and judge this recording</source>
        <translation>Diese Aufnahme auswerten und beurteilen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>Side by side</source>
        <translation>Nebeneinander</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>Vectors of both runs</source>
        <translation>Zeiger beider Läufe</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>Solid: this run with its 95 % region. Dashed: the other one.</source>
        <translation>Voll: dieser Lauf mit seinem 95-%-Gebiet. Gestrichelt: der andere.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>{0} r/min, counts</source>
        <translation>{0} r/min, zählt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>{0} r/min, does not count</source>
        <translation>{0} r/min, zählt nicht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>no run was made of it</source>
        <translation>daraus wurde kein Lauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>It belongs to no run: it was broken off, the source was lost, or it could not be measured.</source>
        <translation>Gehört zu keinem Lauf: abgebrochen, Quelle verloren oder nicht messbar.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>{0}: counts</source>
        <translation>{0}: zählt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>{0}: does not count</source>
        <translation>{0}: zählt nicht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>there is no other run yet</source>
        <translation>es gibt noch keinen anderen Lauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>from "{0}" to "{1}"</source>
        <translation>von „{0}“ zu „{1}“</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_taken.py"/>
        <source>Solid: this run with its 95 % region. Dashed: the other one. ± is of these two runs; what is said of the scatter also counts how far runs lie apart at all.</source>
        <translation>Durchgezogen: dieser Lauf mit seinem 95-%-Gebiet. Gestrichelt: der andere. ± gilt für diese zwei Läufe; was zur Streuung gesagt wird, zählt auch, wie weit Läufe überhaupt auseinanderliegen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/settings.py"/>
        <source>other end</source>
        <translation>Gegenseite</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/settings.py"/>
        <source>{0}: cannot be read ({1}); the usual choices are used</source>
        <translation>{0}: nicht lesbar ({1}); die übliche Wahl gilt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/settings.py"/>
        <source>{0}: is damaged; the usual choices are used, and it is written anew with the next change</source>
        <translation>{0}: ist beschädigt; die übliche Wahl gilt, und mit der nächsten Änderung wird neu geschrieben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/settings.py"/>
        <source>{0}: {1}: not a choice there is; the usual one is used</source>
        <translation>{0}: {1}: keine mögliche Wahl; die übliche gilt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/settings.py"/>
        <source>{0}: cannot be written ({1}); the choices hold until the program is closed</source>
        <translation>{0}: nicht schreibbar ({1}); die Wahl gilt, bis das Programm geschlossen wird</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/settings.py"/>
        <source>{0}: cannot be read (no ordinary file); the usual choices are used</source>
        <translation>{0}: nicht lesbar (keine gewöhnliche Datei); die übliche Wahl gilt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/settings.py"/>
        <source>mm/s peak</source>
        <translation>mm/s peak</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/settings.py"/>
        <source>g peak</source>
        <translation>g peak</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/simulator.py"/>
        <source>at a resonance</source>
        <translation>in einer Resonanz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/simulator.py"/>
        <source>neighbour close in speed</source>
        <translation>Nachbar mit naher Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/simulator.py"/>
        <source>neighbour stronger than 1x</source>
        <translation>Nachbar stärker als 1x</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/simulator.py"/>
        <source>loose pulses</source>
        <translation>lose Impulse</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/simulator.py"/>
        <source>much noise</source>
        <translation>viel Rauschen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/simulator.py"/>
        <source>the simulated rotor has two planes, but the brief has {0}</source>
        <translation>der simulierte Rotor hat zwei Ebenen, die Aufgabe aber {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/stages.py"/>
        <source>under way</source>
        <translation>in Arbeit</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/stages.py"/>
        <source>Next</source>
        <translation>Weiter</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/stages.py"/>
        <source>The machine, its rotor and what is wrong with it</source>
        <translation>Die Maschine, ihr Rotor und was ihr fehlt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/stages.py"/>
        <source>What to look at before balancing</source>
        <translation>Was vor dem Auswuchten zu prüfen ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/stages.py"/>
        <source>Sensors, pulse and inputs, and whether they can be trusted</source>
        <translation>Sensoren, Impuls und Eingänge, und ob man ihnen trauen kann</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/stages.py"/>
        <source>Speed and once-per-rev vibration, run by run</source>
        <translation>Drehzahl und Schwingung der 1. Ordnung, Lauf für Lauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/stages.py"/>
        <source>What to put where, and what was really put on</source>
        <translation>Was wohin kommt, und was wirklich angebracht wurde</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/stages.py"/>
        <source>Before and after, limits, report</source>
        <translation>Vorher und nachher, Grenzwerte, Bericht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/stop_call.py"/>
        <source>STOP THE MACHINE</source>
        <translation>MASCHINE ABSTELLEN</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/stop_call.py"/>
        <source>The abort level was agreed with the owner. Keep clear: the rotor turns until it has run out.</source>
        <translation>Der Abschaltpegel wurde mit dem Betreiber vereinbart. Abstand halten: der Rotor dreht, bis er ausgelaufen ist.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/stop_call.py"/>
        <source>The machine stands</source>
        <translation>Die Maschine steht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/stop_call.py"/>
        <source>Ends the tone and the recording</source>
        <translation>Beendet Ton und Aufnahme</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/stop_call.py"/>
        <source>Stop the machine: {0}</source>
        <translation>Maschine abstellen: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tasks.py"/>
        <source>ended by a fault of the program ({0}); everything recorded before it is kept</source>
        <translation>durch einen Fehler des Programms beendet ({0}); alles zuvor Aufgenommene bleibt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>Tour: balance a simulated fan</source>
        <translation>Rundgang: einen simulierten Ventilator auswuchten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>A fan shakes. Its brief is filled in, its sensors are wired. First measure it as it is: press here.</source>
        <translation>Ein Ventilator schwingt. Seine Aufgabe ist ausgefüllt, seine Sensoren sind angeschlossen. Zuerst messen, wie er ist: hier drücken.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>Now measure what the trial mass does. Start as before.</source>
        <translation>Jetzt messen, was die Testmasse bewirkt. Starten wie zuvor.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>Look at the vectors: they moved. That move shows how the fan answers to a mass.</source>
        <translation>Die Zeiger ansehen: sie haben sich bewegt. Das zeigt, wie der Ventilator auf eine Masse antwortet.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>Now see what the correction did. Start as before.</source>
        <translation>Jetzt sehen, was der Ausgleich bewirkt hat. Starten wie zuvor.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>The vectors are short now: little vibration is left.</source>
        <translation>Die Zeiger sind jetzt kurz: wenig Schwingung ist übrig.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>A known mass shows how the fan answers. Look at the one that is proposed, and put it on the face.</source>
        <translation>Eine bekannte Masse zeigt, wie der Ventilator antwortet. Die vorgeschlagene ansehen und auf die Ansicht setzen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>On a real machine: isolate, lock and block it before hands go in. Here, record the mass as put on.</source>
        <translation>An einer echten Maschine: vor dem Handanlegen freischalten, sichern und blockieren. Hier die Masse als angebracht protokollieren.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>The trial did its work. Take it off again.</source>
        <translation>Die Testmasse hat ihren Dienst getan. Wieder abnehmen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>This is the mass that the fan lacks, with how sure it is. Put it on the face.</source>
        <translation>Diese Masse fehlt dem Ventilator; daneben steht, wie sicher das ist. Auf die Ansicht setzen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>Record the correction as put on.</source>
        <translation>Den Ausgleich als angebracht protokollieren.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>What is left is held against what is permitted. See it on Close-out.</source>
        <translation>Was bleibt, wird mit dem Zulässigen verglichen. Unter Abschluss ansehen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>The bar is below its limit, with its interval. Record the verdict.</source>
        <translation>Der Balken liegt mit seinem Bereich unter dem Grenzwert. Das Ergebnis protokollieren.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>The verdict is recorded. See it on Close-out.</source>
        <translation>Das Ergebnis ist protokolliert. Unter Abschluss ansehen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>Tolerance {0}. You balanced a machine: run, trial, correction, check. The same steps serve a real one.</source>
        <translation>Toleranz {0}. Sie haben eine Maschine ausgewuchtet: Lauf, Test, Ausgleich, Kontrolle. An einer echten sind es dieselben Schritte.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour.py"/>
        <source>The dots are vectors of a few turns each; they gather, so the vibration stands still. The fan runs in real time. The line at the bottom advises a whole job: here the short way is taken.</source>
        <translation>Jeder Punkt ist ein Zeiger aus wenigen Umdrehungen; sie sammeln sich, also steht die Schwingung still. Der Ventilator läuft in Echtzeit. Die Zeile unten rät zu einem vollen Auftrag: hier wird der kurze Weg genommen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_coach.py"/>
        <source>Leave</source>
        <translation>Verlassen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_coach.py"/>
        <source>Leave it here; the Job panel goes on with it</source>
        <translation>Hier verlassen; unter „Auftrag“ geht es weiter</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_coach.py"/>
        <source>Go there ({0})</source>
        <translation>Dorthin ({0})</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_coach.py"/>
        <source>Put the keyboard on the control to use next</source>
        <translation>Tastatur auf das nächste Bedienfeld setzen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_coach.py"/>
        <source>Finish</source>
        <translation>Beenden</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_practice.py"/>
        <source>Go on where I left it</source>
        <translation>Weiter, wo ich war</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_practice.py"/>
        <source>Begin anew</source>
        <translation>Neu beginnen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_practice.py"/>
        <source>Show me</source>
        <translation>Zeigen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_practice.py"/>
        <source>New here? Balance a simulated fan yourself: it takes less than five minutes. It stays here under Job.</source>
        <translation>Neu hier? Wuchten Sie selbst einen simulierten Ventilator aus: es dauert keine fünf Minuten. Der Rundgang bleibt hier unter „Auftrag“.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_practice.py"/>
        <source>First steps</source>
        <translation>Erste Schritte</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_practice.py"/>
        <source>You have begun this before.</source>
        <translation>Das haben Sie schon einmal begonnen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_practice.py"/>
        <source>{0}, practice</source>
        <translation>{0}, Übung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_steps.py"/>
        <source>The run is recorded. The machine runs on until you stop it: press Stop.</source>
        <translation>Der Lauf ist aufgenommen. Die Maschine läuft weiter, bis Sie sie abstellen: Stopp drücken.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_steps.py"/>
        <source>Go to Live: the run is being recorded.</source>
        <translation>Zu „Live“ gehen: der Lauf wird aufgenommen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_steps.py"/>
        <source>It is written into the record.</source>
        <translation>Es wird ins Protokoll geschrieben.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_steps.py"/>
        <source>Before each start a person says that this holds. Read the line, then press Yes.</source>
        <translation>Vor jedem Start sagt eine Person, dass dies gilt. Die Zeile lesen, dann Ja drücken.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_steps.py"/>
        <source>All of it holds: press here, and the machine starts.</source>
        <translation>Alles gilt: hier drücken, und die Maschine startet.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_steps.py"/>
        <source>That run does not count yet. Go to Live for another one.</source>
        <translation>Dieser Lauf zählt noch nicht. Für einen neuen zu „Live“ gehen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_steps.py"/>
        <source>The machine starts. Wait until the first figures are there.</source>
        <translation>Die Maschine startet. Warten, bis die ersten Werte da sind.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_steps.py"/>
        <source>Speed and vibration are there. Press Record run: it ends by itself.</source>
        <translation>Drehzahl und Schwingung sind da. „Lauf aufnehmen“ drücken: er endet von selbst.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_steps.py"/>
        <source>The machine comes to a stop.</source>
        <translation>Die Maschine läuft aus.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_steps.py"/>
        <source>It is being worked out.</source>
        <translation>Wird ausgewertet.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/tour_steps.py"/>
        <source>The mass is on the face. Go on to what is put on.</source>
        <translation>Die Masse ist auf der Ansicht. Weiter zu „Anbringen“.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/view_panel.py"/>
        <source>How things are shown</source>
        <translation>Darstellung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/view_panel.py"/>
        <source>Angles count</source>
        <translation>Winkel zählen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/view_panel.py"/>
        <source>Rotor seen from</source>
        <translation>Blick auf den Rotor</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/view_panel.py"/>
        <source>Colours</source>
        <translation>Farben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/view_panel.py"/>
        <source>Text</source>
        <translation>Schrift</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/view_panel.py"/>
        <source>Language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/watch.py"/>
        <source>no pulses are seen yet: check sensor, mark and threshold</source>
        <translation>noch keine Impulse zu sehen: Sensor, Marke und Schwelle prüfen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Write down the machine, its rotor and the goal here: planes, limits and stops of all other pages come from it.</source>
        <translation>Hier Maschine, Rotor und Ziel aufschreiben: Ebenen, Grenzwerte und Abschaltpegel aller anderen Seiten kommen von hier.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Look here for what balancing cannot cure, and decide whether the machine is worth balancing yet.</source>
        <translation>Hier nach dem suchen, was Auswuchten nicht heilt, und entscheiden, ob sich das Auswuchten schon lohnt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Say which sensor is wired to which input and where it sits, then check that pulse and signals can be trusted.</source>
        <translation>Hier angeben, welcher Sensor an welchem Eingang liegt und wo er sitzt, dann prüfen, ob Impuls und Signalen zu trauen ist.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Start the machine here, watch its once-per-rev vibration settle, and record one run for each state of masses.</source>
        <translation>Hier die Maschine starten, abwarten, bis die Schwingung der 1. Ordnung eingelaufen ist, und für jeden Massenzustand einen Lauf aufnehmen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Find out here which mass goes where, what it will do, and record what was really put on.</source>
        <translation>Hier erfahren, welche Masse wohin kommt und was sie bewirken wird, und protokollieren, was wirklich angebracht wurde.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>See here what the balancing achieved against its limits, then report, accept and close the job.</source>
        <translation>Hier sehen, was das Auswuchten gegen die Grenzwerte erreicht hat; dann berichten, abnehmen und den Auftrag abschließen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The line at the bottom</source>
        <translation>Die Zeile unten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The one thing that matters most about the job now. What runs comes before what is recorded, and a stop before everything else.</source>
        <translation>Das Eine, worauf es im Auftrag jetzt ankommt. Was läuft, geht dem Protokollierten vor, und ein Abschalten allem anderen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The advice follows the record: brief, inspection, hook-up, initial run, trials, correction, check, close-out. It ends where the goal is met with its interval, or where two corrections in a row each cut the worst point by less than {0} %.</source>
        <translation>Der Rat folgt dem Protokoll: Aufgabe, Prüfen, Anschluss, Urlauf, Tests, Ausgleich, Kontrolle, Abschluss. Er endet, wo das Ziel mit seinem Bereich eingehalten ist, oder wo zwei Ausgleiche nacheinander den schlechtesten Messpunkt um weniger als {0} % gesenkt haben.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What the program does not do</source>
        <translation>Was das Programm nicht tut</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Something was asked for that cannot be used. The line says what, where and what would be right. Nothing was changed or lost.</source>
        <translation>Es wurde etwas verlangt, das nicht zu verwenden ist. Die Zeile sagt, was, wo, und was richtig wäre. Nichts wurde geändert oder ging verloren.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Every entry is checked once, before it is written into the record. What does not pass is not recorded.</source>
        <translation>Jeder Eintrag wird einmal geprüft, bevor er ins Protokoll kommt. Was nicht besteht, wird nicht protokolliert.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>this program's own rule</source>
        <translation>eigene Regel dieses Programms</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What goes on</source>
        <translation>Was gerade geschieht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Work that takes a while, with how far it is.</source>
        <translation>Arbeit, die eine Weile dauert, und wie weit sie ist.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>It can be broken off at any time. What was recorded until then is kept.</source>
        <translation>Sie lässt sich jederzeit abbrechen. Was bis dahin aufgenommen wurde, bleibt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Stop the machine</source>
        <translation>Maschine abstellen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A point has reached its abort level while the machine runs. The program cannot stop a machine: you must.</source>
        <translation>Ein Messpunkt hat bei laufender Maschine seinen Abschaltpegel erreicht. Das Programm kann keine Maschine abstellen: das müssen Sie tun.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The mean once-per-rev vector of the last {0} s is held against the abort level of the point, as agreed with the owner. It calls once for each point until the machine stands, and writes an alarm into the record.</source>
        <translation>Der mittlere Zeiger der 1. Ordnung aus den letzten {0} s wird mit dem Abschaltpegel des Messpunkts verglichen, wie er mit dem Betreiber vereinbart ist. Der Ruf kommt einmal je Messpunkt, bis die Maschine steht, und schreibt einen Alarm ins Protokoll.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What must hold before a start</source>
        <translation>Was vor einem Start gelten muss</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Stored energy, thrown masses and turning parts kill. A person says that each of these holds, and the record keeps who.</source>
        <translation>Gespeicherte Energie, weggeschleuderte Massen und drehende Teile töten. Eine Person sagt, dass jedes davon gilt, und das Protokoll hält fest, wer.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Which cautions are shown hangs on brief and masses. Forces are mass times radius times angular speed squared. Local rules and licensed or competent persons come first; the program never says that a machine is safe.</source>
        <translation>Welche Vorsichtsregeln gezeigt werden, hängt von Aufgabe und Massen ab. Kräfte sind Masse mal Radius mal Winkelgeschwindigkeit im Quadrat. Örtliche Vorschriften und zugelassene oder befähigte Personen gehen vor; das Programm sagt nie, dass eine Maschine sicher ist.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>common practice, no source; the force is mechanics</source>
        <translation>übliche Praxis, ohne Quelle; die Kraft ist Mechanik</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Starts counted</source>
        <translation>Gezählte Starts</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>How many starts the machine has had in this job, and how many it may still have.</source>
        <translation>Wie viele Starts die Maschine in diesem Auftrag hatte, und wie viele noch erlaubt sind.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Entries of the brief</source>
        <translation>Einträge der Aufgabe</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What the person wrote. Each finished field is one entry of the record and can be undone.</source>
        <translation>Was die Person geschrieben hat. Jedes fertige Feld ist ein Eintrag im Protokoll und lässt sich zurücknehmen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A field is taken with its unit when it is left. A bare number counts in the unit that is shown.</source>
        <translation>Ein Feld wird mit seiner Einheit übernommen, wenn man es verlässt. Eine bloße Zahl zählt in der gezeigten Einheit.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Abort level</source>
        <translation>Abschaltpegel</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The vibration at which the machine is stopped, whatever is being tried. It is agreed with the owner, and is not the alarm limit: machines that need balancing are often above their alarm already.</source>
        <translation>Die Schwingung, bei der die Maschine abgestellt wird, was immer gerade versucht wird. Sie ist mit dem Betreiber vereinbart und nicht der Alarmwert: Maschinen, die ausgewuchtet werden müssen, liegen oft schon über ihrem Alarm.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A trial mass is offered only where its worst case stays below the abort level; while the machine runs, the last {0} s are held against it.</source>
        <translation>Eine Testmasse wird nur angeboten, wo ihr ungünstigster Fall unter dem Abschaltpegel bleibt; bei laufender Maschine werden die letzten {0} s mit ihm verglichen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Conditions that matter</source>
        <translation>Bedingungen, auf die es ankommt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What changes the vibration beside unbalance, such as load or damper, and how much it may differ between runs.</source>
        <translation>Was die Schwingung außer der Unwucht ändert, etwa Last oder Klappe, und wie weit es sich zwischen Läufen unterscheiden darf.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A run whose condition differs by more than its tolerance is not comparable and is left out, unless you allow it and say why.</source>
        <translation>Ein Lauf, dessen Bedingung um mehr als ihre Toleranz abweicht, ist nicht vergleichbar und bleibt weg, außer Sie erlauben es und sagen, warum.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Machines and their trend</source>
        <translation>Maschinen und ihr Trend</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Past jobs by machine, with the vibration that the last run that counts left behind.</source>
        <translation>Frühere Aufträge nach Maschinen, mit der Schwingung, die der letzte zählende Lauf hinterließ.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Only runs that count are shown. A rise stands out where the intervals of two visits do not explain it.</source>
        <translation>Nur Läufe, die zählen, werden gezeigt. Ein Anstieg fällt auf, wo die Bereiche zweier Einsätze ihn nicht erklären.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Checks with an outcome</source>
        <translation>Prüfungen mit Ergebnis</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>How many of the checks that fit this machine were looked at. A machine that is loose, dirty, worn or misaligned does not hold a balance.</source>
        <translation>Wie viele der Prüfungen, die zu dieser Maschine passen, angesehen wurden. Eine Maschine, die lose, verschmutzt, verschlissen oder schlecht ausgerichtet ist, hält keine Auswuchtung.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Checks are chosen by what the brief says. One is left out only where something is known to be otherwise; each outcome is yours: fine, needs attention, or not done with a reason.</source>
        <translation>Die Prüfungen richten sich nach der Aufgabe. Eine fällt nur weg, wo bekannt ist, dass es anders ist; jedes Ergebnis ist Ihres: in Ordnung, beachten, oder nicht gemacht mit Grund.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Where this check comes from</source>
        <translation>Woher diese Prüfung kommt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>How the check is done, and what counts as fine.</source>
        <translation>Wie geprüft wird, und was als in Ordnung gilt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The table of checks is a file that anybody may read and edit.</source>
        <translation>Die Tabelle der Prüfungen ist eine Datei, die jeder lesen und ändern kann.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>named with the check; else common practice, no source</source>
        <translation>bei der Prüfung genannt; sonst übliche Praxis, ohne Quelle</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Causes and their odds</source>
        <translation>Ursachen und ihre Wahrscheinlichkeit</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What else may make this machine shake. The figures suggest, the person decides.</source>
        <translation>Was die Maschine sonst schwingen lassen kann. Die Befunde raten, die Person entscheidet.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Each figure falls into a row of a table and multiplies the odds of the causes that the row names. A figure known only within an interval counts by the probability that it lies in the row. What was not measured counts nothing: unknown is not absent.</source>
        <translation>Jeder Befund fällt in eine Zeile einer Tabelle und vervielfacht die Chancen der Ursachen, die sie nennt. Ein Befund, der nur in einem Bereich bekannt ist, zählt mit der Wahrscheinlichkeit, in der Zeile zu liegen. Nicht Gemessenes zählt nicht: unbekannt heißt nicht, dass es fehlt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>common practice, no source; the odds are the project's own choice</source>
        <translation>übliche Praxis, ohne Quelle; die Chancen hat das Projekt gewählt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What a measured check found</source>
        <translation>Was eine Messprüfung ergab</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Figures of a recording made for this check, each with its 95 % interval where it has one.</source>
        <translation>Werte aus einer Aufnahme für diese Prüfung, jeder mit seinem 95-%-Bereich, wo er einen hat.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The recording is measured by the same code as a run. Where the figures cannot be trusted the first line says so and why.</source>
        <translation>Die Aufnahme wird mit demselben Code ausgewertet wie ein Lauf. Wo den Werten nicht zu trauen ist, sagt das die erste Zeile, mit Grund.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Spectrum with its orders</source>
        <translation>Spektrum mit seinen Ordnungen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>How strong each frequency is. Balancing lowers the line at running speed alone: what stands at other lines stays.</source>
        <translation>Wie stark jede Frequenz ist. Auswuchten senkt allein die Linie bei Betriebsdrehzahl: was in anderen Linien steht, bleibt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Averaged over the recording; orders are multiples of the speed that the pulse tells.</source>
        <translation>Gemittelt über die Aufnahme; Ordnungen sind Vielfache der Drehzahl, die der Impuls angibt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>averaged periodograms after Welch, from memory</source>
        <translation>gemittelte Periodogramme nach Welch, aus dem Gedächtnis</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Amplitude and phase against speed</source>
        <translation>Amplitude und Phase über der Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A resonance shows as a peak with a turn of phase. Close to one, small changes of speed change the vector, and the balance holds for this speed only.</source>
        <translation>Eine Resonanz zeigt sich als Spitze mit einer Drehung der Phase. Nahe daran ändern kleine Drehzahländerungen den Zeiger, und der Ausgleich gilt nur für diese Drehzahl.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A margin below {0} % is narrow, and within {1} % of a resonance no direction is given for a trial mass. The fit takes the sweep's own transient into account; a sweep number above {2} says that the plain curve is not the steady one.</source>
        <translation>Ein Abstand unter {0} % ist knapp, und innerhalb {1} % einer Resonanz wird für eine Testmasse keine Richtung angegeben. Die Anpassung berücksichtigt das Einschwingen des Durchlaufs selbst; eine Durchlaufzahl über {2} sagt, dass die bloße Kurve nicht die stationäre ist.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>margin: common practice, no source; transient: linear vibration theory</source>
        <translation>Abstand: übliche Praxis, ohne Quelle; Einschwingen: lineare Schwingungslehre</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Level of an input</source>
        <translation>Pegel eines Eingangs</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Peak and mean level of the signal in dB of full scale. Too high is cut off, too low drowns in the input's noise.</source>
        <translation>Spitze und mittlerer Pegel des Signals in dB zur Vollaussteuerung. Zu hoch wird abgeschnitten, zu niedrig geht im Rauschen des Eingangs unter.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Near full scale is above {0} %, weak is below {1} % rms. One sample at full scale counts as cut off.</source>
        <translation>Nahe bei Vollaussteuerung ist über {0} %, schwach ist unter {1} % rms. Ein Abtastwert bei Vollaussteuerung gilt als abgeschnitten.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What is wired here</source>
        <translation>Was hier angeschlossen ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Input number, kind of signal, sensitivity and where the sensor sits.</source>
        <translation>Nummer des Eingangs, Art des Signals, Empfindlichkeit und Lage des Sensors.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Angles of sensors count in the direction of rotation from the datum, angles of masses against rotation from the mark. Both are needed to say where a mass goes on the rotor.</source>
        <translation>Winkel der Sensoren zählen ab dem Bezug in Drehrichtung, Winkel der Massen ab der Marke gegen den Drehsinn. Beide sind nötig, um zu sagen, wohin am Rotor eine Masse kommt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>the trade's usual conventions, no source</source>
        <translation>übliche Vereinbarungen des Fachs, ohne Quelle</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The pulse as it is seen</source>
        <translation>Der Impuls, wie er ankommt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>One pulse a revolution tells speed and rotor angle: every phase, and with it every place of a mass, hangs on it.</source>
        <translation>Ein Impuls je Umdrehung gibt Drehzahl und Rotorwinkel an: jede Phase, und damit jeder Platz einer Masse, hängt an ihm.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>An edge is timed between samples, by its shape. Which edge counts is settled at the first run; a later run with another edge, or with a mark whose width differs by more than {0} % and {1}°, is refused until you say what changed.</source>
        <translation>Eine Flanke wird zwischen Abtastwerten bestimmt, nach ihrer Form. Welche Flanke gilt, entscheidet der erste Lauf; ein späterer mit anderer Flanke oder mit einer Marke, deren Breite um mehr als {0} % und {1}° abweicht, wird abgelehnt, bis Sie sagen, was sich geändert hat.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The rotor face</source>
        <translation>Die Rotoransicht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The rotor seen from the end that is named, with its mark, sensors and pulse sensor. Angle 0° is the edge of the mark that trips the sensor.</source>
        <translation>Der Rotor vom genannten Ende gesehen, mit Marke, Sensoren und Impulssensor. Winkel 0° ist die Kante der Marke, die den Sensor auslöst.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Angles of the rotor count against rotation from the mark: a place at 90° passes a sensor a quarter turn after the mark does.</source>
        <translation>Winkel am Rotor zählen ab der Marke gegen den Drehsinn: eine Stelle bei 90° kommt eine Viertelumdrehung nach der Marke am Sensor vorbei.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>the trade's usual convention, no source</source>
        <translation>übliche Vereinbarung des Fachs, ohne Quelle</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Sensitivity, delay and corner of an input as they were measured, with their 95 % intervals.</source>
        <translation>Empfindlichkeit, Verzug und Eckfrequenz eines Eingangs, wie gemessen, mit ihren 95-%-Bereichen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>They are written into the hook-up with date and way. Phases are put right by them.</source>
        <translation>Sie werden mit Datum und Verfahren in den Anschluss geschrieben. Phasen werden damit berichtigt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>theory of linear systems</source>
        <translation>Theorie linearer Systeme</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What the last seconds of the signals say, the gravest first, each with what to do.</source>
        <translation>Was die letzten Sekunden der Signale sagen, das Schwerste zuerst, jeweils mit Abhilfe.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What blocks must be mended first: nothing measured with it can be trusted. A caution can be lived with, if you know why it is there.</source>
        <translation>Was sperrt, ist zuerst zu beheben: keiner Messung damit ist zu trauen. Mit einem Hinweis lässt sich leben, wenn Sie seinen Grund kennen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A pulse that can be trusted</source>
        <translation>Ein Impuls, dem zu trauen ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A pulse too many or too few is a wrong revolution, and an edge that scatters moves every phase by as much.</source>
        <translation>Ein Impuls zu viel oder zu wenig ist eine falsche Umdrehung, und eine streuende Flanke verschiebt jede Phase um ebenso viel.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Caution above {0} % of pulses lost or extra, blocked above {1} %. Caution above {2}° of scatter, blocked above {3}°. Speed within {4} % of twice or half the nameplate's means another number of marks. Lamps show from {5} % of the pulse's height on.</source>
        <translation>Hinweis über {0} % verlorener oder überzähliger Impulse, Sperre über {1} %. Hinweis über {2}° Streuung, Sperre über {3}°. Eine Drehzahl innerhalb {4} % der doppelten oder halben Nenndrehzahl heißt: andere Zahl von Marken. Lampen zeigen sich ab {5} % der Impulshöhe.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A level that can be measured</source>
        <translation>Ein Pegel, der sich messen lässt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A signal cut off at full scale, standing still or nearly silent does not show the vibration.</source>
        <translation>Ein Signal, das bei Vollaussteuerung abgeschnitten ist, stillsteht oder fast stumm ist, zeigt die Schwingung nicht.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Any sample at full scale blocks. Standing still for {0} ms blocks. Caution above {1} %, and below {2} % rms; for the pulse below {3} % of full scale.</source>
        <translation>Jeder Abtastwert bei Vollaussteuerung sperrt. Stillstand von {0} ms sperrt. Hinweis über {1} % und unter {2} % rms; beim Impuls unter {3} % der Vollaussteuerung.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Something else in the signal</source>
        <translation>Anderes im Signal</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What comes by cable, mount or mains and is no vibration of the machine.</source>
        <translation>Was über Kabel, Befestigung oder Netz kommt und keine Schwingung der Maschine ist.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A jump is {0} times the usual step. Surges: {1} % of the mean square is slow. Hum: a mains line above {2} % of 1x. Crosstalk: the pulse shows with {3} % of the vibration. Same signal: correlation above {4}. A mount is used up to a third of the frequency that it hands on.</source>
        <translation>Ein Sprung ist das {0}-fache des üblichen Schritts. Schwankungen: {1} % des mittleren Quadrats ist langsam. Brumm: eine Netzlinie über {2} % von 1x. Übersprechen: der Impuls zeigt sich mit {3} % der Schwingung. Gleiches Signal: Korrelation über {4}. Eine Befestigung wird bis zu einem Drittel der Frequenz genutzt, die sie überträgt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Once-per-rev vibration in the check</source>
        <translation>Schwingung der 1. Ordnung in der Prüfung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Whether this input shows the vibration at running speed at all.</source>
        <translation>Ob dieser Eingang die Schwingung bei Betriebsdrehzahl überhaupt zeigt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Below {0} times its own 95 % half width it is hardly above its noise. Below {1} r/min velocity needs an input whose corner is under running speed divided by {2}.</source>
        <translation>Unter dem {0}-fachen ihrer eigenen halben 95-%-Breite liegt sie kaum über dem Rauschen. Unter {1} r/min braucht die Schwinggeschwindigkeit einen Eingang, dessen Eckfrequenz unter der Drehfrequenz geteilt durch {2} liegt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Mean speed from pulse to pulse since the figures began, with the slowest and the fastest revolution below.</source>
        <translation>Mittlere Drehzahl von Impuls zu Impuls, seit die Werte laufen; darunter die langsamste und die schnellste Umdrehung.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Runs are fitted together where their speeds differ by up to {0} %; up to {1} % with a caution; beyond that not, unless you allow it and say why.</source>
        <translation>Läufe werden gemeinsam ausgewertet, wo ihre Drehzahlen um bis zu {0} % abweichen; bis {1} % mit Hinweis; darüber nicht, außer Sie erlauben es und sagen, warum.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Revolutions and pulses</source>
        <translation>Umdrehungen und Impulse</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>How much was measured so far, or how many pulses were lost or too many.</source>
        <translation>Wie viel bisher gemessen wurde, oder wie viele Impulse fehlten oder zu viel waren.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A run takes {0} revolutions and {1} s; below {2} r/min {3} revolutions are enough. Pulses that were lost are put back by count, so that no revolution is numbered wrong.</source>
        <translation>Ein Lauf braucht {0} Umdrehungen und {1} s; unter {2} r/min genügen {3} Umdrehungen. Verlorene Impulse werden durch Zählen ersetzt, so dass keine Umdrehung falsch nummeriert ist.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Once-per-rev amplitude</source>
        <translation>Amplitude der 1. Ordnung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>How strong the vibration at running speed is: the part that unbalance makes and that a mass can change.</source>
        <translation>Wie stark die Schwingung bei Betriebsdrehzahl ist: der Teil, den Unwucht macht und den eine Masse ändern kann.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A cosine of the shaft's angle is fitted to the samples by least squares, with its first {0} multiples beside it, over blocks of {1} revolutions; the mean over all blocks is shown.</source>
        <translation>Ein Kosinus des Wellenwinkels wird nach der Methode der kleinsten Quadrate an die Abtastwerte angepasst, daneben seine ersten {0} Vielfachen, in Blöcken von {1} Umdrehungen; gezeigt wird das Mittel aller Blöcke.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>least squares, textbook</source>
        <translation>kleinste Quadrate, Lehrbuch</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Once-per-rev phase</source>
        <translation>Phase der 1. Ordnung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>How many degrees of the turn after the pulse the vibration has its positive peak. With it the program knows where the mass goes.</source>
        <translation>Wie viele Grad der Umdrehung nach dem Impuls die Schwingung ihre positive Spitze hat. Damit weiß das Programm, wohin die Masse kommt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>It lags: 0° is at the pulse, 90° a quarter turn after it. It belongs to the quantity that is shown; velocity and displacement differ by 90°.</source>
        <translation>Sie eilt nach: 0° ist beim Impuls, 90° eine Viertelumdrehung danach. Sie gehört zur gezeigten Größe; Schwinggeschwindigkeit und Schwingweg unterscheiden sich um 90°.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What ± says</source>
        <translation>Was ± sagt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The true mean lies within ± with 95 % confidence, by the scatter within this run alone. It shrinks as the run goes on.</source>
        <translation>Das wahre Mittel liegt mit 95 % Vertrauen innerhalb ±, allein nach der Streuung in diesem Lauf. Mit der Dauer des Laufs wird es kleiner.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Student's t; the repeatability is common practice, no source</source>
        <translation>Students t; die Wiederholbarkeit ist übliche Praxis, ohne Quelle</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Whether the vector stands still</source>
        <translation>Ob der Zeiger stillsteht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A mean is worth something only where the vector does not wander. Steady: it can be used. Anything else says what moves it.</source>
        <translation>Ein Mittel taugt nur, wo der Zeiger nicht wandert. Stabil: verwendbar. Alles andere sagt, was ihn bewegt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A plain mean is held against a drift, a settling, a speed that changes and a second source by their likelihoods. The limits are set so that about one steady record in a hundred is doubted. Too short to tell: record on.</source>
        <translation>Ein bloßes Mittel wird nach den Likelihoods mit Drift, Einlaufen, wechselnder Drehzahl und zweiter Quelle verglichen. Die Grenzen sind so gesetzt, dass etwa eine von hundert stabilen Aufnahmen angezweifelt wird. Zu kurz für ein Urteil: weiter aufnehmen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>likelihood ratio test; the limits are from simulated records of the project</source>
        <translation>Likelihood-Quotienten-Test; die Grenzen sind aus simulierten Aufnahmen des Projekts</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A second source close in speed</source>
        <translation>Eine zweite Quelle mit naher Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Another machine or a belt runs nearly as fast. Its vibration adds and subtracts in turn, so that amplitude and phase swing: a beat. Stronger than 1x, it carries the phase round and round: it walks.</source>
        <translation>Eine andere Maschine oder ein Riemen läuft fast gleich schnell. Ihre Schwingung verstärkt und schwächt im Wechsel, so dass Amplitude und Phase schwanken: eine Schwebung. Ist sie stärker als 1x, dreht sie die Phase rundum: sie wandert.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The source is fitted beside 1x and taken off; what is shown as “without it” is 1x alone. This is sure after one whole beat. Record whole beats, or use the vector without it. A neighbour that leaves more than {0} % of the goal at running speed is stopped, or kept the same in all runs.</source>
        <translation>Die Quelle wird neben 1x angepasst und abgezogen; was als „ohne sie“ gezeigt wird, ist 1x allein. Sicher ist das nach einer ganzen Schwebung. Ganze Schwebungen aufnehmen oder den Zeiger ohne sie verwenden. Ein Nachbar, der bei Betriebsdrehzahl mehr als {0} % des Ziels hinterlässt, wird abgestellt oder in allen Läufen gleich gehalten.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>least squares of two vectors; common practice, no source, for what to do</source>
        <translation>kleinste Quadrate zweier Zeiger; was zu tun ist: übliche Praxis, ohne Quelle</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A vector that drifts</source>
        <translation>Ein Zeiger, der driftet</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>It moves one way: the machine warms up, something builds up or settles, or the speed changes.</source>
        <translation>Er bewegt sich in eine Richtung: die Maschine wird warm, etwas baut sich auf oder setzt sich, oder die Drehzahl ändert sich.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Settled is 1x that moves less than {0} % and {1}° in {2} min. Wait, then record.</source>
        <translation>Eingelaufen ist 1x, das sich in {2} min weniger als {0} % und {1}° bewegt. Warten, dann aufnehmen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Each dot is the vector of a few revolutions: its distance is the amplitude, its direction the phase. A tight round cloud is a good run; an arc or a ring is a phase that wanders.</source>
        <translation>Jeder Punkt ist der Zeiger weniger Umdrehungen: sein Abstand ist die Amplitude, seine Richtung die Phase. Eine enge runde Wolke ist ein guter Lauf; ein Bogen oder Ring ist eine wandernde Phase.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A dot is {0} revolutions. The ring about the mean is the joint 95 % region of amplitude and phase. Dashed: the last run.</source>
        <translation>Ein Punkt sind {0} Umdrehungen. Der Ring um das Mittel ist das gemeinsame 95-%-Gebiet von Amplitude und Phase. Gestrichelt: der letzte Lauf.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Hotelling's T², from memory</source>
        <translation>Hotellings T², aus dem Gedächtnis</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Phase against time, from its mean. Flat is good. A wave is a second source, a slope is a drift.</source>
        <translation>Phase über der Zeit, um ihr Mittel. Flach ist gut. Eine Welle ist eine zweite Quelle, eine Neigung eine Drift.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Each dot is {0} revolutions. The curve is the one that the verdict on steadiness rests on.</source>
        <translation>Jeder Punkt sind {0} Umdrehungen. Auf der Kurve beruht das Urteil über die Stabilität.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>this program's own picture</source>
        <translation>eigenes Bild dieses Programms</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The mean revolution, with a band for how much single ones differ from it. Pure unbalance is one smooth wave.</source>
        <translation>Die mittlere Umdrehung, mit einem Band für die Abweichung einzelner. Reine Unwucht ist eine glatte Welle.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Samples are put at equal angles of the shaft and averaged; the band is one standard deviation.</source>
        <translation>Abtastwerte werden auf gleiche Wellenwinkel umgerechnet und gemittelt; das Band ist eine Standardabweichung.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>synchronous averaging, textbook</source>
        <translation>synchrone Mittelung, Lehrbuch</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>When the run ends</source>
        <translation>Wann der Lauf endet</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>How far the run is. It ends by itself when what you chose is reached, or you end it.</source>
        <translation>Wie weit der Lauf ist. Er endet von selbst, wenn das Gewählte erreicht ist, oder Sie beenden ihn.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Not before {0} revolutions and {1} s; below {2} r/min not before {3} revolutions. Where the interval that is wanted would take too long, the line says so. The machine runs on until you stop it.</source>
        <translation>Nicht vor {0} Umdrehungen und {1} s; unter {2} r/min nicht vor {3} Umdrehungen. Wo der gewünschte Bereich zu lange dauern würde, sagt es die Zeile. Die Maschine läuft weiter, bis Sie sie abstellen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What is on the rotor</source>
        <translation>Was auf dem Rotor sitzt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Masses beyond the rotor's first state, as the record has them. The next run is measured with these.</source>
        <translation>Massen über den Urzustand des Rotors hinaus, wie im Protokoll. Der nächste Lauf wird mit ihnen gemessen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Pieces are added as vectors. Two pieces that sit apart count for less together than their sum.</source>
        <translation>Stücke werden als Zeiger addiert. Zwei Stücke, die auseinander sitzen, zählen zusammen weniger als ihre Summe.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>addition of vectors</source>
        <translation>Addition von Zeigern</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Vectors of a run</source>
        <translation>Zeiger eines Laufs</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Amplitude and phase of each point as the record keeps them, each with its 95 % interval and the verdict on steadiness.</source>
        <translation>Amplitude und Phase jedes Messpunkts, wie im Protokoll, jeweils mit 95-%-Bereich und Urteil über die Stabilität.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>They are measured from the recording of the run, over all of it, and can be measured again at any time.</source>
        <translation>Sie werden aus der ganzen Aufnahme des Laufs gemessen und lassen sich jederzeit neu messen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>About this run</source>
        <translation>Über diesen Lauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Kind, speed, length, masses and conditions of the run.</source>
        <translation>Art, Drehzahl, Länge, Massen und Bedingungen des Laufs.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A run takes {0} revolutions and {1} s.</source>
        <translation>Ein Lauf braucht {0} Umdrehungen und {1} s.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What changed between two runs</source>
        <translation>Was sich zwischen zwei Läufen geändert hat</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Amplitude in percent and phase in degrees, from the earlier run to the later one, and whether the change is more than scatter.</source>
        <translation>Amplitude in Prozent und Phase in Grad, vom früheren zum späteren Lauf, und ob die Änderung mehr ist als Streuung.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>common practice, no source, for the repeatability</source>
        <translation>übliche Praxis, ohne Quelle, für die Wiederholbarkeit</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Why a run counts or does not</source>
        <translation>Warum ein Lauf zählt oder nicht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A run that does not belong to the others spoils every mass worked out with it. The line says which rule speaks against it.</source>
        <translation>Ein Lauf, der nicht zu den anderen gehört, verdirbt jede Masse, die mit ihm bestimmt wird. Die Zeile sagt, welche Regel gegen ihn spricht.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Some rules refuse always, some unless you allow it and say why, some only caution. The table of rules is a file that anybody may read.</source>
        <translation>Manche Regeln lehnen immer ab, manche außer Sie erlauben es und sagen, warum, manche mahnen nur. Die Tabelle der Regeln ist eine Datei, die jeder lesen kann.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The vector did not stand still</source>
        <translation>Der Zeiger stand nicht still</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The run was doubted because its phase or amplitude moved while it was recorded.</source>
        <translation>Der Lauf wird angezweifelt, weil sich Phase oder Amplitude während der Aufnahme bewegt haben.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Not steady: refused unless you allow it. Repeat the run when it is steady, record whole beats, or use it and say why.</source>
        <translation>Nicht stabil: abgelehnt, außer Sie erlauben es. Den Lauf wiederholen, wenn er stabil ist, ganze Schwebungen aufnehmen, oder ihn verwenden und sagen, warum.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Another speed</source>
        <translation>Andere Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The answer of a machine to a mass changes with speed.</source>
        <translation>Die Antwort einer Maschine auf eine Masse ändert sich mit der Drehzahl.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Up to {0} % accepted, up to {1} % with caution. Where a sweep predicts more than {2} % or {3}° the run is not fitted. Within {4} % of twice or half the speed the pulse is doubted first.</source>
        <translation>Bis {0} % angenommen, bis {1} % mit Hinweis. Wo ein Durchlauf mehr als {2} % oder {3}° voraussagt, geht der Lauf nicht in die Rechnung. Innerhalb {4} % der doppelten oder halben Drehzahl wird zuerst der Impuls angezweifelt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Long enough</source>
        <translation>Lang genug</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A short record shows an accident of the moment.</source>
        <translation>Eine kurze Aufnahme zeigt einen Zufall des Augenblicks.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>At least {0} revolutions and {1} s, below {2} r/min {3} revolutions, and one whole beat where there is a second source.</source>
        <translation>Mindestens {0} Umdrehungen und {1} s, unter {2} r/min {3} Umdrehungen, und eine ganze Schwebung, wo es eine zweite Quelle gibt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The same mark</source>
        <translation>Dieselbe Marke</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>If mark or sensor moved, every phase turned with it, and the mass would go to the wrong place.</source>
        <translation>Wurden Marke oder Sensor bewegt, so hat sich jede Phase mitgedreht, und die Masse käme an den falschen Platz.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Edge and polarity must stay; the mark's width may differ by {0} % or {1}°, whichever is more. A known turn is put right; an unknown one takes one run in a mass state already measured.</source>
        <translation>Flanke und Polarität müssen bleiben; die Breite der Marke darf um {0} % oder {1}° abweichen, was immer mehr ist. Eine bekannte Drehung wird berichtigt; eine unbekannte braucht einen Lauf in einem schon gemessenen Massenzustand.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Like conditions</source>
        <translation>Gleiche Bedingungen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Load, heat and damper move the vector too, and a mass must not be blamed for it.</source>
        <translation>Auch Last, Wärme und Klappe bewegen den Zeiger, und das darf keiner Masse zugeschrieben werden.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Conditions chosen in the brief stay within their tolerance. Settled is less than {0} % and {1}° in {2} min; minutes since the start count as alike within {3} % or {4} min.</source>
        <translation>Die in der Aufgabe gewählten Bedingungen bleiben in ihrer Toleranz. Eingelaufen heißt weniger als {0} % und {1}° in {2} min; Minuten seit dem Start gelten innerhalb {3} % oder {4} min als gleich.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Above the abort level</source>
        <translation>Über dem Abschaltpegel</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The level that was agreed with the owner was reached in this run.</source>
        <translation>Der mit dem Betreiber vereinbarte Pegel wurde in diesem Lauf erreicht.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Stop the machine, take the last masses off or make them smaller, and find out why before the next start. The broadband level counts too.</source>
        <translation>Maschine abstellen, die letzten Massen abnehmen oder verkleinern, und vor dem nächsten Start den Grund finden. Auch der Summenpegel zählt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The same masses</source>
        <translation>Dieselben Massen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Run and record must say the same about what is on the rotor.</source>
        <translation>Lauf und Protokoll müssen dasselbe darüber sagen, was auf dem Rotor sitzt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Mend the run's masses, or the record of what was put on and taken off.</source>
        <translation>Die Massen des Laufs berichtigen, oder das Protokoll über Angebrachtes und Abgenommenes.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The same points</source>
        <translation>Dieselben Messpunkte</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Runs are compared point by point: the same sensors, in the same unit, that hear something.</source>
        <translation>Läufe werden Messpunkt für Messpunkt verglichen: dieselben Sensoren, in derselben Einheit, die etwas hören.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A point below {0} % of its last run with the same masses hears nothing. Points that fit better the other way round were exchanged.</source>
        <translation>Ein Messpunkt unter {0} % seines letzten Laufs mit denselben Massen hört nichts. Messpunkte, die umgekehrt besser passen, wurden vertauscht.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A recording without a run</source>
        <translation>Eine Aufnahme ohne Lauf</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>It was recorded, but no run was made of it: broken off, or the source went away.</source>
        <translation>Sie wurde aufgenommen, aber es wurde kein Lauf daraus: abgebrochen, oder die Quelle ging verloren.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Nothing recorded is thrown away. A run can be made of it; what is marked incomplete says so.</source>
        <translation>Nichts Aufgenommenes wird weggeworfen. Daraus lässt sich ein Lauf machen; was als unvollständig vermerkt ist, sagt es.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A known mass that shows how this machine answers. It should change the vibration clearly and harm nothing.</source>
        <translation>Eine bekannte Masse, die zeigt, wie diese Maschine antwortet. Sie soll die Schwingung deutlich ändern und nichts beschädigen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Usual size: its force at speed is {0} % of the weight that the plane's bearing carries, never above {1} %. With stored coefficients: as much as changes the vibration by {2} % of the first run, in a direction that lowers it. Within {3} % of a resonance: half of it, and no direction.</source>
        <translation>Übliche Größe: ihre Kraft bei Drehzahl ist {0} % des Gewichts, das das Lager der Ebene trägt, nie über {1} %. Mit gespeicherten Koeffizienten: so viel, dass sich die Schwingung um {2} % des Urlaufs ändert, in einer Richtung, die sie senkt. Innerhalb {3} % einer Resonanz: die Hälfte, und keine Richtung.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Force of a mass at speed</source>
        <translation>Kraft einer Masse bei Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What the fixing must hold, in newton and in kilograms of force.</source>
        <translation>Was die Befestigung halten muss, in Newton und in Kilogramm Kraft.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Mass times radius times angular speed squared. The fixing holds it by shape, not by friction; local rules and the maker's word come first.</source>
        <translation>Masse mal Radius mal Winkelgeschwindigkeit im Quadrat. Die Befestigung hält durch Formschluss, nicht durch Reibung; örtliche Vorschriften und das Wort des Herstellers gehen vor.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What the trial does at the points</source>
        <translation>Was der Test an den Messpunkten bewirkt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The vibration to expect with the trial mass on, and the worst that could come at a wrong angle.</source>
        <translation>Die zu erwartende Schwingung mit der Testmasse, und das Schlimmste, was bei falschem Winkel kommen könnte.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Worst case: the size of the last vector and the size of the mass's effect added up. Where that passes the abort level a smaller mass or a better direction is offered.</source>
        <translation>Ungünstigster Fall: der Betrag des letzten Zeigers und der Betrag der Massenwirkung zusammengezählt. Wo das über den Abschaltpegel geht, wird eine kleinere Masse oder eine bessere Richtung angeboten.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The correction</source>
        <translation>Der Ausgleich</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Which mass at which angle lowers the once-per-rev vibration best, with 95 % intervals.</source>
        <translation>Welche Masse bei welchem Winkel die Schwingung der 1. Ordnung am besten senkt, mit 95-%-Bereichen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>All runs that count are fitted together: vibration is the first state plus what each mass does. The interval holds the scatter of the runs, the repeatability and the errors of weighing and placing, {0} unless said otherwise. It comes from an inverted test and has no end where the trial said nothing.</source>
        <translation>Alle Läufe, die zählen, gehen zusammen in die Rechnung: die Schwingung ist der Urzustand plus das, was jede Masse bewirkt. Der Bereich enthält die Streuung der Läufe, die Wiederholbarkeit und die Fehler von Wiegen und Platzieren, {0}, wenn nichts anderes gesagt ist. Er kommt aus einem umgekehrten Test und hat kein Ende, wo der Test nichts sagte.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>method of influence coefficients, least squares; the errors assumed are common practice, no source</source>
        <translation>Methode der Einflusskoeffizienten, kleinste Quadrate; die angenommenen Fehler sind übliche Praxis, ohne Quelle</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A mass that is not determined</source>
        <translation>Eine Masse, die nicht bestimmt ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The runs cannot tell this mass: the figure could as well be any other. Do not put it on.</source>
        <translation>Die Läufe sagen diese Masse nicht: der Wert könnte ebenso gut jeder andere sein. Nicht anbringen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The trial's effect is too close to the scatter. Below {0} standard deviations it is too weak, from {1} on it is good. Take a larger trial mass, or repeat the trial.</source>
        <translation>Die Wirkung der Testmasse liegt zu nahe an der Streuung. Unter {0} Standardabweichungen ist sie zu schwach, ab {1} ist sie gut. Eine größere Testmasse nehmen oder den Testlauf wiederholen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>simulated jobs of the project</source>
        <translation>simulierte Aufträge des Projekts</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Condition number</source>
        <translation>Konditionszahl</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>How well the planes can be told apart. Near one is good. Large: two planes do much the same, small errors make large opposed masses, and fewer planes are better.</source>
        <translation>Wie gut sich die Ebenen trennen lassen. Nahe eins ist gut. Groß: zwei Ebenen wirken fast gleich, kleine Fehler geben große gegensinnige Massen, und weniger Ebenen sind besser.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>From {0} on the method with the least expected vibration is taken instead of least squares.</source>
        <translation>Ab {0} wird statt der kleinsten Quadrate das Verfahren mit der kleinsten zu erwartenden Schwingung genommen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>numerical analysis; the limit is from simulated jobs of the project</source>
        <translation>numerische Mathematik; die Grenze ist aus simulierten Aufträgen des Projekts</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What to know about this correction</source>
        <translation>Was zu diesem Ausgleich zu wissen ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Something that was assumed or that does not fit. The masses are worked out all the same, and the interval holds what can be held.</source>
        <translation>Etwas wurde angenommen oder passt nicht. Die Massen werden trotzdem bestimmt, und der Bereich enthält, was sich erfassen lässt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>chi-square test; the assumed figures are common practice, no source</source>
        <translation>Chi-Quadrat-Test; die angenommenen Werte sind übliche Praxis, ohne Quelle</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Why there is no correction, or a doubtful one</source>
        <translation>Warum es keinen Ausgleich gibt, oder einen zweifelhaften</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Without a first run and a trial in each plane there is nothing to work with; with runs that do not agree the result is not to be trusted.</source>
        <translation>Ohne Urlauf und einen Testlauf je Ebene gibt es nichts zu rechnen; passen die Läufe nicht zusammen, ist dem Ergebnis nicht zu trauen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Each plane takes one run with a known mass whose effect is at least {0} standard deviations; {1} are good. Runs are doubted at {2} %.</source>
        <translation>Jede Ebene braucht einen Lauf mit bekannter Masse, deren Wirkung mindestens {0} Standardabweichungen beträgt; {1} sind gut. Läufe werden bei {2} % angezweifelt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>simulated jobs of the project; common practice, no source</source>
        <translation>simulierte Aufträge des Projekts; übliche Praxis, ohne Quelle</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What each point should show after the masses that are thought of, and the level below which it stays with 95 % confidence.</source>
        <translation>Was jeder Messpunkt mit den geplanten Massen zeigen sollte, und der Pegel, unter dem er mit 95 % Vertrauen bleibt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The fitted vectors plus what the masses add. The upper level holds the scatter of the fit and of placing.</source>
        <translation>Die angepassten Zeiger plus das, was die Massen hinzufügen. Der obere Pegel enthält die Streuung von Anpassung und Platzierung.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>propagation of variance</source>
        <translation>Fortpflanzung der Varianz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Masses on the rotor</source>
        <translation>Massen auf dem Rotor</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Dark: on the rotor. Dashed: thought of. The wedge is where the correction lies with 95 % confidence: within it, exact placing gains nothing.</source>
        <translation>Dunkel: auf dem Rotor. Gestrichelt: geplant. Im Keil liegt der Ausgleich mit 95 % Vertrauen: darin bringt genaueres Platzieren nichts.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Angles count from the mark as chosen under View; files always count against rotation.</source>
        <translation>Winkel zählen ab der Marke, wie unter Ansicht gewählt; in Dateien immer gegen den Drehsinn.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Which pieces at which positions come nearest to the correction, with the vibration to expect.</source>
        <translation>Welche Stücke an welchen Stellen dem Ausgleich am nächsten kommen, mit der zu erwartenden Schwingung.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The search is exact: no other set of these pieces does better than is said. Fewer pieces are proposed where they do nearly as well.</source>
        <translation>Die Suche ist genau: keine andere Wahl dieser Stücke ist besser als angegeben. Weniger Stücke werden vorgeschlagen, wo sie fast so gut sind.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>branch and bound with a proven bound</source>
        <translation>Verzweigen und Begrenzen mit bewiesener Schranke</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A piece and its force</source>
        <translation>Ein Stück und seine Kraft</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Mass, place, fixing and force of a piece at speed.</source>
        <translation>Masse, Platz, Befestigung und Kraft eines Stücks bei Drehzahl.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Force is mass times radius times angular speed squared. A piece at another radius counts by mass times radius.</source>
        <translation>Die Kraft ist Masse mal Radius mal Winkelgeschwindigkeit im Quadrat. Ein Stück auf anderem Radius zählt nach Masse mal Radius.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Reckoning at the piece</source>
        <translation>Rechnen am Stück</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Splitting, combining, moving to another radius, drilling: the same unbalance made in another way.</source>
        <translation>Teilen, zusammenfassen, auf anderen Radius setzen, bohren: dieselbe Unwucht, anders gemacht.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What counts is mass times radius as a vector. Depths are for the maker or a competent person to allow.</source>
        <translation>Was zählt, ist Masse mal Radius als Zeiger. Tiefen muss der Hersteller oder eine befähigte Person erlauben.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>mechanics; the density is the material's</source>
        <translation>Mechanik; die Dichte ist die des Werkstoffs</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>First and last run that count, each with its 95 % interval, against the limit that was agreed.</source>
        <translation>Erster und letzter Lauf, der zählt, jeweils mit 95-%-Bereich, gegen den vereinbarten Grenzwert.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Compared under like conditions. A point that is more than {0} % higher than before is said.</source>
        <translation>Verglichen unter gleichen Bedingungen. Ein Messpunkt, der um mehr als {0} % höher liegt als zuvor, wird genannt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What unbalance would make the vibration that is left, against what is permitted for this grade, mass and speed.</source>
        <translation>Welche Unwucht die verbliebene Schwingung machen würde, gegen das, was bei dieser Gütestufe, Masse und Drehzahl zulässig ist.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>ISO 21940-11, from memory; the guard band is the project's own</source>
        <translation>ISO 21940-11, aus dem Gedächtnis; der Sicherheitsabstand ist der des Projekts</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The last run's vibration against what was agreed or the table chosen.</source>
        <translation>Die Schwingung des letzten Laufs gegen das Vereinbarte oder die gewählte Tabelle.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Met or not met where the 95 % interval lies wholly on one side of the limit, else it cannot be told yet. A support counts as rigid where its lowest natural frequency is above {0} times the speed in the direction measured.</source>
        <translation>Eingehalten oder nicht eingehalten, wo der 95-%-Bereich ganz auf einer Seite des Grenzwerts liegt, sonst noch nicht entscheidbar. Eine Abstützung gilt als starr, wo ihre tiefste Eigenfrequenz in Messrichtung über dem {0}-fachen der Drehfrequenz liegt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>ISO 20816, from memory; else what was agreed in the brief</source>
        <translation>ISO 20816, aus dem Gedächtnis; sonst das in der Aufgabe Vereinbarte</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Where the limits come from</source>
        <translation>Woher die Grenzwerte kommen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The standard, contract or agreement that the verdict rests on.</source>
        <translation>Norm, Vertrag oder Vereinbarung, auf der das Ergebnis beruht.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Contract first, then the table, then what the owner agreed. The edition of a standard that is in force decides.</source>
        <translation>Zuerst der Vertrag, dann die Tabelle, dann das mit dem Betreiber Vereinbarte. Es gilt die gültige Ausgabe einer Norm.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The verdict of the job</source>
        <translation>Das Ergebnis des Auftrags</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Where the job stands against its goal: met, not met, or cannot be told yet. That it is met does not say that the machine is safe to run.</source>
        <translation>Wie der Auftrag zu seinem Ziel steht: eingehalten, nicht eingehalten oder noch nicht entscheidbar. Eingehalten heißt nicht, dass die Maschine sicher läuft.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>All planes and points must be met, each with its interval.</source>
        <translation>Alle Ebenen und Messpunkte müssen eingehalten sein, jeweils mit ihrem Bereich.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What is not done yet</source>
        <translation>Was noch nicht getan ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What a careful person does before a job is closed. It can be closed without, and the report says so.</source>
        <translation>Was eine sorgfältige Person tut, bevor ein Auftrag abgeschlossen wird. Es geht auch ohne, und der Bericht sagt das.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Trial masses are off and weighed back in, pieces are photographed, fixing is permanent before the final run.</source>
        <translation>Testmassen sind abgenommen und zurückgewogen, Stücke fotografiert, die Befestigung vor dem letzten Lauf dauerhaft.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>What stands against closing</source>
        <translation>Was gegen den Abschluss spricht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>This would leave something dangerous or wrong in the machine or in the record.</source>
        <translation>Das würde etwas Gefährliches oder Falsches in der Maschine oder im Protokoll lassen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Trial masses still on the rotor block: nobody knows how long a temporary fixing holds.</source>
        <translation>Testmassen auf dem Rotor sperren: niemand weiß, wie lange eine vorläufige Befestigung hält.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>For the next visit</source>
        <translation>Für den nächsten Einsatz</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Influence coefficients that are kept, so that the next visit may need no trial mass.</source>
        <translation>Einflusskoeffizienten, die behalten werden, damit der nächste Einsatz vielleicht keine Testmasse braucht.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>The first run with a mass tests them: they are given up where it moves otherwise by more than scatter. A change of more than {0} % or {1}° between runs says that the machine is another one.</source>
        <translation>Der erste Lauf mit einer Masse prüft sie: sie werden aufgegeben, wo er sich um mehr als die Streuung anders bewegt. Eine Änderung um mehr als {0} % oder {1}° zwischen Läufen sagt, dass es eine andere Maschine ist.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Met where it is within it with at least {0} % probability, not met where it is outside with as much, else it cannot be told yet: measure longer or repeat. Permissible: grade divided by angular speed, times the rotor's mass, shared between the planes by where the mass lies.</source>
        <translation>Eingehalten, wo sie mit mindestens {0} % Wahrscheinlichkeit innerhalb liegt, nicht eingehalten, wo sie ebenso sicher außerhalb liegt, sonst noch nicht entscheidbar: länger messen oder wiederholen. Zulässig: Gütestufe geteilt durch Winkelgeschwindigkeit, mal Rotormasse, auf die Ebenen verteilt nach der Lage des Schwerpunkts.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Worked out from the noise right beside running speed, so that neighbouring blocks may depend on each other. It does not hold what changes after a stop and a restart: that is the repeatability, which is added when masses are worked out. Until it is measured it is {0} % and {0}°, with a belt, heat or a load that it follows {1} % and {1}°, within {2} % of a resonance {3} % and {3}°.</source>
        <translation>Bestimmt aus dem Rauschen dicht neben der Drehfrequenz, so dass benachbarte Blöcke voneinander abhängen dürfen. Nicht enthalten ist, was sich nach Abstellen und Neustart ändert: das ist die Wiederholbarkeit, die hinzukommt, wenn Massen bestimmt werden. Bis zur Messung ist sie {0} % und {0}°, mit Riemen, Wärme oder einer Last, der die Schwingung folgt, {1} % und {1}°, näher als {2} % an einer Resonanz {3} % und {3}°.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A change stands out where it is larger than the 95 % of both runs and of the repeatability together. Where the brief states none it is {0} % and {0}°, with a belt, heat or a load that it follows {1} % and {1}°, within {2} % of a resonance {3} % and {3}°.</source>
        <translation>Eine Änderung fällt auf, wo sie größer ist als die 95 % beider Läufe und der Wiederholbarkeit zusammen. Nennt die Aufgabe keine, ist sie {0} % und {0}°, mit Riemen, Wärme oder einer Last, der die Schwingung folgt, {1} % und {1}°, näher als {2} % an einer Resonanz {3} % und {3}°.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>Until the brief or repeated runs say otherwise a repeatability is assumed: {0} % and {0}°, with a belt, heat or a load that it follows {1} % and {1}°, within {2} % of a resonance {3} % and {3}°. Placing is {4} until the brief says otherwise. Runs that agree worse than would happen in {5} % of sound jobs are doubted.</source>
        <translation>Bis die Aufgabe oder wiederholte Läufe etwas anderes sagen, wird eine Wiederholbarkeit angenommen: {0} % und {0}°, mit Riemen, Wärme oder einer Last, der die Schwingung folgt, {1} % und {1}°, näher als {2} % an einer Resonanz {3} % und {3}°. Für die Platzierung gilt {4}, bis die Aufgabe etwas anderes sagt. Läufe, die schlechter zusammenpassen, als es bei {5} % einwandfreier Aufträge vorkäme, werden angezweifelt.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why.toml"/>
        <source>A start is counted when the cautions were acknowledged. One whose temperature was not noted counts as a cold and as a hot one. How many are allowed, and how many minutes lie between, is the owner's or the motor maker's word in the brief.</source>
        <translation>Ein Start zählt, sobald die Vorsichtsregeln bestätigt sind. Einer, dessen Temperatur nicht vermerkt ist, zählt als kalter und als heißer. Wie viele erlaubt sind und wie viele Minuten dazwischen liegen, steht in der Aufgabe, nach dem Wort des Betreibers oder des Motorherstellers.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_panel.py"/>
        <source>Also shown here</source>
        <translation>Hier auch gezeigt</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_panel.py"/>
        <source>Put this away (Esc)</source>
        <translation>Schließen (Esc)</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_panel.py"/>
        <source>Rule</source>
        <translation>Regel</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_panel.py"/>
        <source>Why: {0}</source>
        <translation>Warum: {0}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_panel.py"/>
        <source>{0} Rule: {1} Source: {2}.</source>
        <translation>{0} Regel: {1} Quelle: {2}.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_texts.py"/>
        <source>"{0}": there is no such text; keys are in {1}</source>
        <translation>„{0}“: diesen Text gibt es nicht; Schlüssel stehen in {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_texts.py"/>
        <source>figure "{0}": the code has no {1}; name a constant as "module:NAME"</source>
        <translation>Wert „{0}“: der Code hat kein {1}; eine Konstante als „Modul:NAME“ nennen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_texts.py"/>
        <source>text "{0}"</source>
        <translation>Text „{0}“</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_texts.py"/>
        <source>{0}: is there twice; remove one</source>
        <translation>{0}: ist doppelt; einen entfernen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_texts.py"/>
        <source>{0}.{1}: is empty; say it, or “common practice, no source”</source>
        <translation>{0}.{1}: ist leer; angeben, oder „übliche Praxis, ohne Quelle“</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_texts.py"/>
        <source>{0}: `under` and `says` belong together; give both or none</source>
        <translation>{0}: „under“ und „says“ gehören zusammen; beide angeben oder keines</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_texts.py"/>
        <source>{0}.under: there is no text "{1}"</source>
        <translation>{0}.under: den Text „{1}“ gibt es nicht</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_texts.py"/>
        <source>figure "{0}": is in no text; remove it</source>
        <translation>Wert „{0}“: steht in keinem Text; entfernen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_texts.py"/>
        <source>{0}: its braces do not fit; write {0}</source>
        <translation>{0}: Klammern passen nicht; {0} schreiben</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_texts.py"/>
        <source>{0}: there is no figure "{1}"; name it under [figure]</source>
        <translation>{0}: den Wert „{1}“ gibt es nicht; unter [figure] nennen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_texts.py"/>
        <source>{0}: {1} is written out; take it from the code under [figure]</source>
        <translation>{0}: {1} ist ausgeschrieben; unter [figure] aus dem Code nehmen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/why_texts.py"/>
        <source>{0} % and {1}</source>
        <translation>{0} % und {1}</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/work_row.py"/>
        <source>{0}: how far it is</source>
        <translation>{0}: wie weit es ist</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/work_row.py"/>
        <source>Stop {0}; nothing is lost</source>
        <translation>{0} anhalten; nichts geht verloren</translation>
    </message>
    <message>
        <location filename="../../../ui/report_masses.py"/>
        <source>Before hands go in: isolated, locked and tried by the local rules, and the rotor itself blocked: draught, backflow and an off-centre mass turn it. Welding: earth clamp on the rotor beside the weld, never through bearings or coupling; sensors, pulse sensor and computer disconnected first. Bolted: the force carried by shape, not by friction. Never weld or drill blade roots, welds or pressure parts. Before the start: block, tools, cables and tape out and counted, own lock removed last by its owner, nobody in the plane of rotation. Local rules decide, and what needs a licensed or competent person is left to one.</source>
        <translation>Vor dem Handanlegen: nach örtlichen Vorschriften freigeschaltet, gesichert und durch einen Startversuch geprüft, und der Rotor selbst blockiert: Zug, Rückströmung und eine außermittige Masse drehen ihn. Schweißen: Masseklemme am Rotor neben der Naht, nie durch Lager oder Kupplung; Sensoren, Impulssensor und Rechner vorher abgeklemmt. Geschraubt: die Kraft wird durch Formschluss getragen, nicht durch Reibung. Nie an Schaufelfüßen, Schweißnähten oder drucktragenden Teilen schweißen oder bohren. Vor dem Start: Blockierung, Werkzeug, Leitungen und Band entfernt und gezählt, das eigene Schloss zuletzt vom Besitzer abgenommen, niemand in der Drehebene. Örtliche Vorschriften entscheiden, und was zugelassene oder befähigte Personen verlangt, bleibt ihnen überlassen.</translation>
    </message>
    <message>
        <location filename="../../../ui/report_outcome.py"/>
        <source>Equivalent residual unbalance from 1x, bow, misalignment and coupling included: never the result of a balancing machine. The edition of a standard that is in force, the machine's maker and local rules decide.</source>
        <translation>Gleichwertige Restunwucht aus 1x, mit Verkrümmung, Ausrichtfehler und Kupplung: nie das Ergebnis einer Auswuchtmaschine. Es entscheiden die gültige Ausgabe der Norm, der Hersteller der Maschine und örtliche Vorschriften.</translation>
    </message>
</context>
</TS>
