<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>stillshaft</name>
    <message>
        <location filename="../../../solver/brief.py"/>
        <source>drive.{0}: "{1}" must be above 0</source>
        <translation>drive.{0}: „{1}“ muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../solver/brief.py"/>
        <source>neighbours {0}.{1}: {2} must be above 0 and below 1e6</source>
        <translation>neighbours {0}.{1}: {2} muss größer als 0 und kleiner als 1e6 sein</translation>
    </message>
    <message>
        <location filename="../../../solver/brief.py"/>
        <source>{0} {1}.amplitude: {2} must be above 0</source>
        <translation>{0} {1}.amplitude: {2} muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../solver/brief.py"/>
        <source>stock {0}.count</source>
        <translation>Anzahl im Vorrat, {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/brief.py"/>
        <source>conditions.{0}, tolerance</source>
        <translation>Bedingung {0}, Toleranz</translation>
    </message>
    <message>
        <location filename="../../../solver/brief.py"/>
        <source>drive.belt_length: {0} does not reach round half of each pulley, {1} mm; give the pitch length of the belt and the pitch diameters of the pulleys</source>
        <translation>Riemenlänge: {0} reicht nicht um die Hälfte jeder Scheibe, {1} mm; Wirklänge des Riemens und Wirkdurchmesser der Scheiben angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/brief.py"/>
        <source>{0}: {1} must be {2} or more, and below 1e9</source>
        <translation>{0}: {1} muss {2} oder mehr und kleiner als 1e9 sein</translation>
    </message>
    <message>
        <location filename="../../../solver/brief.py"/>
        <source>drive.line: "{0}" is {1} Hz; mains have 50 Hz or 60 Hz, railways 16.7 Hz</source>
        <translation>Netzfrequenz: „{0}“ ist {1} Hz; Netze haben 50 Hz oder 60 Hz, Bahnen 16.7 Hz</translation>
    </message>
    <message>
        <location filename="../../../solver/brief.py"/>
        <source>drive.poles: {0}: a motor has an even number, 2 to {1}</source>
        <translation>Polzahl: {0}: ein Motor hat eine gerade Zahl, 2 bis {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/brief.py"/>
        <source>starts.window_end: "{0}" is no date and time; write for example "2026-11-26 17:00", in UTC</source>
        <translation>starts.window_end: „{0}“ ist kein Datum mit Uhrzeit; zum Beispiel „2026-11-26 17:00“ schreiben, in UTC</translation>
    </message>
    <message>
        <location filename="../../../solver/brief.py"/>
        <source>starts.window_end: "{0}" is no date and time; write for example "2026-11-26 17:00"{1}</source>
        <translation>starts.window_end: „{0}“ ist kein Datum mit Uhrzeit; zum Beispiel „2026-11-26 17:00“ schreiben{1}</translation>
    </message>
    <message>
        <location filename="../../../solver/brief.py"/>
        <source>, in UTC</source>
        <translation>, in UTC</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.py"/>
        <source>removed metal</source>
        <translation>abgetragenes Metall</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.py"/>
        <source>{0} g {1} "{2}" at {3}°</source>
        <translation>{0} g {1} „{2}“ bei {3}°</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.py"/>
        <source>any point</source>
        <translation>jeden Messpunkt</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.py"/>
        <source>no speed limit</source>
        <translation>keine Höchstdrehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.py"/>
        <source>a speed that the brief does not say</source>
        <translation>einer Drehzahl, die die Aufgabe nicht nennt</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.py"/>
        <source>too fast</source>
        <translation>zu schnell</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.py"/>
        <source>speed limit</source>
        <translation>Höchstdrehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.py"/>
        <source>{0}: caution "{1}": its id is used twice; each needs its own</source>
        <translation>{0}: Vorsichtsregel „{1}“: ihre id kommt zweimal vor; jede braucht ihre eigene</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.py"/>
        <source>{0}: caution "{1}": its braces name what is not known there; there is {2}</source>
        <translation>{0}: Vorsichtsregel „{1}“: ihre Klammern nennen dort Unbekanntes; es gibt {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>common practice, no source</source>
        <translation>übliche Praxis, ohne Quelle</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>set screw</source>
        <translation>Feststellschraube</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>grub screw</source>
        <translation>Gewindestift</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>clamp screw</source>
        <translation>Klemmschraube</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>weld bead</source>
        <translation>Schweißraupe</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>Local rules, the owner's permits and a licensed or competent person decide; this list adds to them and replaces none of them.</source>
        <translation>Örtliche Vorschriften, die Freigaben des Betreibers und zugelassene oder befähigte Personen entscheiden; diese Liste ergänzt sie und ersetzt keine.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>Isolated from every source of power and stored energy, locked with your own lock, and tried: a start was attempted and nothing moved.</source>
        <translation>Von jeder Antriebs- und gespeicherten Energie getrennt, mit eigenem Schloss gesichert und geprüft: ein Start wurde versucht, und nichts bewegte sich.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>The rotor itself is blocked by mechanical means: draught, backflow and off-centre mass turn a rotor that is locked out.</source>
        <translation>Der Rotor selbst ist mechanisch blockiert: Zug, Rückströmung und außermittige Masse drehen auch einen freigeschalteten Rotor.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>Dampers and valves are closed, where there are any.</source>
        <translation>Klappen und Ventile sind zu, wo es welche gibt.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>Other machines on the same duct, pipe or base: stopped, or known not to turn, heat or shake this one.</source>
        <translation>Andere Maschinen an Kanal, Rohr oder Fundament: abgestellt, oder bekannt, dass sie diese nicht drehen, heizen oder schütteln.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>Permits for confined space and for hot work are there, where local rules ask for them.</source>
        <translation>Erlaubnisse für enge Räume und Heißarbeiten liegen vor, wo örtliche Vorschriften sie verlangen.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>Count tools, cables, pieces and tape on the way in: they are counted again on the way out.</source>
        <translation>Werkzeug, Kabel, Stücke und Band auf dem Weg hinein zählen: auf dem Weg hinaus wird wieder gezählt.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>Local rules and the person in charge of the machine decide whether it may start; this list adds to them and replaces none of them.</source>
        <translation>Örtliche Vorschriften und der Verantwortliche der Maschine entscheiden, ob sie starten darf; diese Liste ergänzt sie und ersetzt keine.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>Block, tools, cables and tape are out and counted; guards are closed.</source>
        <translation>Blockierung, Werkzeug, Kabel und Band sind heraus und gezählt; Schutzeinrichtungen sind geschlossen.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>Everybody is out and clear; each lock is taken off last, by its owner.</source>
        <translation>Alle sind heraus und auf Abstand; jedes Schloss nimmt sein Besitzer zuletzt ab.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>Somebody stands at the emergency stop and sees or hears you.</source>
        <translation>Jemand steht am Not-Halt und sieht oder hört Sie.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>Nobody is in the plane of rotation, nor near enough for loose clothes, hair or cables to be caught.</source>
        <translation>Niemand steht in der Drehebene oder so nah, dass lose Kleidung, Haare oder Kabel erfasst werden können.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>Every mass is fixed by the rule for its fixing. Forces at {0}: {1}. Largest: {2}.</source>
        <translation>Jede Masse ist nach der Regel für ihre Befestigung fest. Kräfte bei {0}: {1}. Größte: {2}.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>forces unknown</source>
        <translation>Kräfte unbekannt</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>The force at speed cannot be told for {0}: give speed and radius in the brief before you start.</source>
        <translation>Die Kraft bei Drehzahl ist nicht anzugeben für {0}: vor dem Start Drehzahl und Radius in der Aufgabe angeben.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>metal removed</source>
        <translation>Metall abgetragen</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>Metal was removed ({0}): depth and wall left are as the maker or a competent person allows.</source>
        <translation>Metall wurde abgetragen ({0}): Tiefe und Restwand sind so, wie Hersteller oder befähigte Person es erlauben.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>masses changed</source>
        <translation>Massen geändert</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>First start since masses were changed: low speed or a bump first, listen, then full speed.</source>
        <translation>Erster Start nach geänderten Massen: erst niedrige Drehzahl oder kurz antippen, horchen, dann volle Drehzahl.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>The rotor must never turn faster than {0}; it is to run at {1}.</source>
        <translation>Der Rotor darf nie schneller drehen als {0}; er soll mit {1} laufen.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>The speed asked for, {0}, is above the rotor's highest, {1}: do not start at it; mend the brief or the setpoint.</source>
        <translation>Die verlangte Drehzahl, {0}, liegt über der höchsten des Rotors, {1}: nicht mit ihr starten; Aufgabe oder Sollwert berichtigen.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>The brief does not say the rotor's highest speed: ask its maker or owner before you start.</source>
        <translation>Die Aufgabe nennt die höchste Drehzahl des Rotors nicht: vor dem Start Hersteller oder Betreiber fragen.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>Stop the machine when a point crosses its abort level: {0}.</source>
        <translation>Die Maschine abstellen, wenn ein Messpunkt seinen Abschaltpegel überschreitet: {0}.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>no abort</source>
        <translation>kein Abschaltpegel</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>No abort level is agreed for {0}: agree with the owner when to stop the machine.</source>
        <translation>Für {0} ist kein Abschaltpegel vereinbart: mit dem Betreiber vereinbaren, wann die Maschine abzustellen ist.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>run before</source>
        <translation>Lauf davor</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>Mark, pulse sensor, vibration sensors and cables are as in the run "{0}"; if not, say what changed before you measure.</source>
        <translation>Marke, Impulssensor, Schwingungssensoren und Kabel sind wie im Lauf „{0}“; sonst vor dem Messen sagen, was sich änderte.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>{0}: tape, magnet and adhesive do not hold a mass on a turning rotor, for a trial no more than for good; fix it by bolt, clamp or weld.</source>
        <translation>{0}: Band, Magnet und Kleber halten keine Masse auf einem drehenden Rotor, zum Test so wenig wie auf Dauer; mit Schraube, Klemme oder Schweißung befestigen.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>{0}: clamped or held by set screws serves for trials only, within the force and torque that the clamp's maker gives.</source>
        <translation>{0}: geklemmt oder mit Feststellschrauben gehalten taugt nur für Tests, innerhalb von Kraft und Drehmoment nach Angabe des Klemmenherstellers.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>{0}: grade and torque of the bolt as specified, locked; nut and washers weighed with it; the force is carried by shape, not by friction.</source>
        <translation>{0}: Festigkeit und Anzugsmoment der Schraube wie vorgeschrieben, gesichert; Mutter und Scheiben mitgewogen; die Kraft trägt Form, nicht Reibung.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>{0}: earth clamp on the rotor beside the weld, never through bearings or coupling; sensors, pulse sensor, data acquisition and laptop disconnected first; parent metal weldable; dust and gas cleared; slag off and cool before you measure.</source>
        <translation>{0}: Masseklemme am Rotor neben der Schweißung, nie durch Lager oder Kupplung; Sensoren, Impulssensor, Messgerät und Laptop vorher abklemmen; Grundwerkstoff schweißbar; Staub und Gas beseitigt; Schlacke weg und kalt vor dem Messen.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>{0}: depth and wall left come from the maker or a competent person; never from blade roots, welds or pressure parts.</source>
        <translation>{0}: Tiefe und Restwand gibt der Hersteller oder eine befähigte Person an; nie an Schaufelfüßen, Schweißnähten oder drucktragenden Teilen.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>{0}: the record does not say how it is fixed; say it, and look at it again before you start.</source>
        <translation>{0}: im Protokoll steht nicht, wie es befestigt ist; angeben und vor dem Start noch einmal ansehen.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>The abort level at {0} can never call for a stop: the hook-up has no such point. Move it to a point that is wired, or agree how that place is watched.</source>
        <translation>Der Abschaltpegel an {0} kann nie zum Abschalten auffordern: Im Anschluss gibt es diesen Messpunkt nicht. Ihn auf einen angeschlossenen Messpunkt legen oder vereinbaren, wie diese Stelle überwacht wird.</translation>
    </message>
    <message>
        <location filename="../../../solver/cautions.toml"/>
        <source>abort nowhere</source>
        <translation>Abschaltpegel ohne Messpunkt</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>{0}: id: {1} must be 1 to {2}</source>
        <translation>{0}: id: {1} muss 1 bis {2} sein</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>{0}: at: {1} is no UTC time such as 2026-11-25T08:30:00.000+00:00</source>
        <translation>{0}: at: {1} ist keine UTC-Zeit wie 2026-11-25T08:30:00.000+00:00</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>{0}: {1}: has {2} entries, at most {3}</source>
        <translation>{0}: {1}: hat {2} Einträge, höchstens {3}</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>{0}: note: a check that was not done needs a reason; write why</source>
        <translation>{0}: note: eine nicht gemachte Prüfung braucht einen Grund; ihn angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>{0}: {1}: is empty</source>
        <translation>{0}: {1}: ist leer</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>{0}: {1} is no SHA-256 in hex</source>
        <translation>{0}: {1} ist kein SHA-256 in Hexadezimal</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>{0}: vectors: must be one or more, each point once; there is {1}</source>
        <translation>{0}: vectors: müssen einer oder mehr sein, jeder Messpunkt einmal; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>{0}: speed_rpm: {1} must be above 0</source>
        <translation>{0}: speed_rpm: {1} muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>{0}: vectors: an amplitude is below 0</source>
        <translation>{0}: vectors: eine Amplitude ist kleiner als 0</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>{0}: radius_mm: {1} must be above 0</source>
        <translation>{0}: radius_mm: {1} muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>{0}: pieces: are given to put on or to place; "taken off" names them by of and numbers</source>
        <translation>{0}: pieces: gehören zum Anbringen oder Platzieren; „taken off“ nennt sie durch of und numbers</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>{0}: of: "{1}" needs none</source>
        <translation>{0}: of: „{1}“ braucht keines</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>{0}: of: "{1}" names what was put on</source>
        <translation>{0}: of: „{1}“ nennt, was angebracht wurde</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>needs none</source>
        <translation>braucht keines</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>names what was put on</source>
        <translation>nennt, was angebracht wurde</translation>
    </message>
    <message>
        <location filename="../../../solver/events.py"/>
        <source>{0}: covariance.matrix: must have two rows and columns for each of its points</source>
        <translation>{0}: covariance.matrix: muss je Messpunkt zwei Zeilen und Spalten haben</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>the record has what is no unit or number: {0}</source>
        <translation>das Protokoll enthält, was keine Einheit oder Zahl ist: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>no start is left ({0}): agree on more with the owner, or close the job</source>
        <translation>kein Start ist mehr frei ({0}): mit dem Betreiber weitere vereinbaren oder den Auftrag abschließen</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>wait {0} min for the next start ({1}); then {2}</source>
        <translation>{0} min bis zum nächsten Start warten ({1}); dann {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>{0} start counted</source>
        <translation>{0} Start gezählt</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>{0} starts counted</source>
        <translation>{0} Starts gezählt</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>the window ends at {0} UTC</source>
        <translation>das Zeitfenster endet um {0} UTC</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>the next not before {0} UTC</source>
        <translation>der nächste nicht vor {0} UTC</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>nothing is said yet</source>
        <translation>noch keine Angaben</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>running speed {0} r/min is above the rotor's highest, {1} r/min</source>
        <translation>die Betriebsdrehzahl {0} r/min liegt über der höchsten des Rotors, {1} r/min</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>what decides is said</source>
        <translation>was entscheidet, ist angegeben</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>no check is recorded</source>
        <translation>keine Prüfung ist protokolliert</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>needs attention: {0}</source>
        <translation>zu beachten: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>{0} of {1} checks that fit this machine are open</source>
        <translation>{0} von {1} für diese Maschine passenden Prüfungen sind offen</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>all {0} checks that fit this machine are recorded</source>
        <translation>alle {0} für diese Maschine passenden Prüfungen sind protokolliert</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>nothing is wired up yet</source>
        <translation>noch ist nichts angeschlossen</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>the signals were not checked</source>
        <translation>die Signale wurden nicht geprüft</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>the signal check found something that blocks</source>
        <translation>die Signalprüfung fand etwas, das alles aufhält</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>the signals were checked</source>
        <translation>die Signale wurden geprüft</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>no run is recorded</source>
        <translation>kein Lauf ist protokolliert</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>no mass was put on</source>
        <translation>keine Masse wurde angebracht</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>{0} pieces are held by tape, magnet or adhesive</source>
        <translation>{0} Stücke halten mit Band, Magnet oder Kleber</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>on the rotor: {0}</source>
        <translation>auf dem Rotor: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>the job is closed</source>
        <translation>der Auftrag ist abgeschlossen</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>the goal is not reached, and balancing was not stopped</source>
        <translation>das Ziel ist nicht erreicht, und das Auswuchten wurde nicht beendet</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>this computer's clock was set forward by {0} min; waits are told without it</source>
        <translation>die Uhr dieses Rechners wurde um {0} min vorgestellt; Wartezeiten gelten ohne das</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>this computer's clock was set back by {0} min; waits are told without it</source>
        <translation>die Uhr dieses Rechners wurde um {0} min zurückgestellt; Wartezeiten gelten ohne das</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.py"/>
        <source>the last start is dated {0} min ahead of this computer's clock; look at both</source>
        <translation>der letzte Start trägt eine Zeit {0} min vor der Uhr dieses Rechners; beide ansehen</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>a closed job takes no more entries but a report, until it is reopened</source>
        <translation>ein abgeschlossener Auftrag nimmt außer einem Bericht keine Einträge mehr auf, bis er wieder geöffnet wird</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>what cannot be read is not guessed at</source>
        <translation>was nicht lesbar ist, wird nicht geraten</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>the abort level is agreed with the owner: what was put on last comes off or is made smaller before the next start</source>
        <translation>der Abschaltpegel ist mit dem Betreiber vereinbart: das zuletzt Angebrachte kommt vor dem nächsten Start ab oder wird kleiner</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>a machine that crosses its abort level without any mass put on is not started again before somebody decided so</source>
        <translation>eine Maschine, die ohne angebrachte Masse ihren Abschaltpegel überschreitet, startet erst wieder, wenn jemand das entschieden hat</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>runs before and after an unknown turn are never fitted together; one run in a mass state already measured shows the turn</source>
        <translation>Läufe vor und nach einer unbekannten Verdrehung werden nie gemeinsam gerechnet; ein Lauf in einem schon gemessenen Massenzustand zeigt die Verdrehung</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>for good</source>
        <translation>endgültig</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>planes, speed, abort levels and goal decide what may be put on and when to stop</source>
        <translation>Ebenen, Drehzahl, Abschaltpegel und Ziel entscheiden, was angebracht werden darf und wann Schluss ist</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>above its highest speed a rotor may burst: that limit is its maker's</source>
        <translation>über seiner höchsten Drehzahl kann ein Rotor bersten: diese Grenze setzt der Hersteller</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>an abort level stops nothing at a point that is not measured</source>
        <translation>ein Abschaltpegel bewirkt nichts an einem Messpunkt, der nicht gemessen wird</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>an overhung disc is balanced in one plane first; a couple only if axial or far-bearing 1x stays above the goal</source>
        <translation>eine fliegende Scheibe wird zuerst in einer Ebene ausgewuchtet; der Momentenanteil nur, wenn 1x axial oder am fernen Lager über dem Ziel bleibt</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>a machine that is loose, dirty, worn or misaligned does not hold a balance</source>
        <translation>eine lose, schmutzige, verschlissene oder schlecht ausgerichtete Maschine hält keine Auswuchtung</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>what needs attention is put right before masses are put on, or the person says why not</source>
        <translation>was zu beachten ist, wird vor dem Anbringen von Massen behoben, oder die Person sagt, warum nicht</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>vectors mean something only with sensitivity, place and pulse known</source>
        <translation>Zeiger sagen nur etwas, wenn Empfindlichkeit, Platz und Impuls bekannt sind</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>the pulse is resolved once, at the signal check, and a bad one spoils every phase</source>
        <translation>der Impuls wird einmal festgelegt, bei der Signalprüfung, und ein schlechter verdirbt jede Phase</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>what neighbours do to 1x cannot be balanced: above 30 % of the goal they are stopped, or kept the same in all runs</source>
        <translation>was Nachbarn zu 1x beitragen, lässt sich nicht auswuchten: über 30 % des Ziels werden sie abgestellt oder in allen Läufen gleich gehalten</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>a run that is too short or beats is not trusted until it covers whole beats</source>
        <translation>ein zu kurzer oder schwebender Lauf gilt erst als verlässlich, wenn er ganze Schwebungen umfasst</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>runs are comparable when 1x moves less than 2 % and 2° in five minutes</source>
        <translation>Läufe sind vergleichbar, wenn 1x sich in fünf Minuten weniger als 2 % und 2° bewegt</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>speed to 0.5 % is accepted, to 2 % with caution, beyond not fitted</source>
        <translation>Drehzahl bis 0.5 % wird angenommen, bis 2 % mit Vorbehalt, darüber nicht gemeinsam gerechnet</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>a run that does not belong to the others spoils every mass worked out with it</source>
        <translation>ein Lauf, der nicht zu den anderen gehört, verdirbt jede damit berechnete Masse</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>every correction is worked out from the vibration without masses</source>
        <translation>jeder Ausgleich geht von der Schwingung ohne Massen aus</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>balancing changes 1x that unbalance makes, and nothing else; it suggests, the person decides</source>
        <translation>Auswuchten ändert nur das 1x, das Unwucht macht; das Programm rät, die Person entscheidet</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>balancing lowers 1x alone: where other orders dominate, more mass does not bring the level down</source>
        <translation>Auswuchten senkt nur 1x: wo andere Ordnungen überwiegen, senkt mehr Masse den Pegel nicht</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>within 20 % of a resonance the lag is uncertain and the response large: no trial direction, half the trial mass</source>
        <translation>innerhalb 20 % einer Resonanz ist die Nacheilung unsicher und die Antwort groß: keine Testrichtung, halbe Testmasse</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>what repeats after a stop and a restart decides trust, not the scatter within a run; may be skipped with a reason</source>
        <translation>über die Verlässlichkeit entscheidet, was sich nach Halt und Neustart wiederholt, nicht die Streuung im Lauf; mit Begründung zu übergehen</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>a trial's effect cannot be told from an initial state that moves by itself</source>
        <translation>die Wirkung eines Tests ist von einem Urzustand, der sich selbst bewegt, nicht zu trennen</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>starts are scarce: stored coefficients, fewer planes and a trial in a good direction need fewer</source>
        <translation>Starts sind knapp: gespeicherte Koeffizienten, weniger Ebenen und ein Test in guter Richtung brauchen weniger</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>a known mass shows how each point answers to the plane; a tenth of the weight on a bearing as force is usual</source>
        <translation>eine bekannte Masse zeigt, wie jeder Messpunkt auf die Ebene antwortet; üblich ist als Kraft ein Zehntel des Gewichts auf einem Lager</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>the worst case |v0| + |H·w| of a trial stays below the abort level</source>
        <translation>der ungünstigste Fall |v0| + |H·w| eines Tests bleibt unter dem Abschaltpegel</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>the trial's effect is the change from the initial run</source>
        <translation>die Wirkung des Tests ist die Änderung gegen den Urlauf</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>what was put on is believed when it was measured</source>
        <translation>was angebracht wurde, gilt, wenn es gemessen ist</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>without a solution there is no mass to put on</source>
        <translation>ohne Lösung gibt es keine Masse anzubringen</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>an effect below 5 standard deviations leaves more vibration than it should; 15 are good</source>
        <translation>eine Wirkung unter 5 Standardabweichungen lässt mehr Schwingung übrig, als sie soll; 15 sind gut</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>where no trial mass would do, more runs average the scatter</source>
        <translation>wo keine Testmasse genügt, mitteln mehr Läufe die Streuung</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>a correction inside its own region, or coefficients that change by more than 30 % or 30° between runs, makes nothing better</source>
        <translation>ein Ausgleich innerhalb seines eigenen Gebiets, oder Koeffizienten, die sich zwischen Läufen um mehr als 30 % oder 30° ändern, verbessert nichts</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>stop where the next correction is below the smallest piece, or two in a row each cut the worst point by less than 20 %</source>
        <translation>aufhören, wo der nächste Ausgleich kleiner als das kleinste Stück ist, oder zwei nacheinander den schlechtesten Messpunkt um je weniger als 20 % senkten</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>the runs agree and every plane is determined</source>
        <translation>die Läufe passen zueinander, und jede Ebene ist bestimmt</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>large opposed masses that the runs hardly tell are not worth it: the static part or one plane first, then measure</source>
        <translation>große gegenüberliegende Massen, die die Läufe kaum bestimmen, lohnen nicht: zuerst der statische Anteil oder eine Ebene, dann messen</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>the goal is not met yet and what is to be added is clear of its scatter</source>
        <translation>das Ziel ist noch nicht erreicht, und was hinzukommt, liegt deutlich über seiner Streuung</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>motors are heated by each start: the minutes between are those of its maker or owner</source>
        <translation>jeder Start erwärmt den Motor: die Minuten dazwischen nennt Hersteller oder Betreiber</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>starts are scarce: how many are allowed is the owner's word</source>
        <translation>Starts sind knapp: wie viele erlaubt sind, sagt der Betreiber</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>trial masses are listed and off before a job is closed</source>
        <translation>Testmassen sind aufgeführt und ab, bevor ein Auftrag abgeschlossen wird</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>a trial mass that is not weighed back in may still be in the machine</source>
        <translation>eine nicht zurückgewogene Testmasse kann noch in der Maschine sein</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>the next visit begins with a look for missing pieces</source>
        <translation>der nächste Einsatz beginnt mit der Suche nach fehlenden Stücken</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>permanent fixing is done before the final run, so that the run shows what stays</source>
        <translation>endgültig befestigt wird vor dem Schlusslauf, damit er zeigt, was bleibt</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>the final run shows the rotor as it stays</source>
        <translation>der Schlusslauf zeigt den Rotor, wie er bleibt</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>other points and orders are to be no worse than before</source>
        <translation>andere Messpunkte und Ordnungen dürfen nicht schlechter sein als vorher</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>first and final run are compared under like conditions</source>
        <translation>erster Lauf und Schlusslauf werden unter gleichen Bedingungen verglichen</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>met with its interval: more mass makes nothing surer</source>
        <translation>eingehalten samt Bereich: mehr Masse macht nichts sicherer</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>the report says where the job stands against its goal, also where it was not reached</source>
        <translation>der Bericht sagt, wie der Auftrag zu seinem Ziel steht, auch wenn es nicht erreicht wurde</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>acceptance has a basis, a name and a signature, or a refusal</source>
        <translation>eine Abnahme hat Grundlage, Namen und Unterschrift, oder es gibt eine Ablehnung</translation>
    </message>
    <message>
        <location filename="../../../solver/guidance.toml"/>
        <source>nothing is left to do here</source>
        <translation>hier ist nichts mehr zu tun</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>{0} may bring {1} to {2}, above its abort level of {3}: put on no more than {4} % of it, or opposite the heavy spot</source>
        <translation>{0} kann {1} auf {2} bringen, über den Abschaltpegel von {3}: höchstens {4} % davon anbringen, oder gegenüber der schweren Stelle</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>measure with {0} on</source>
        <translation>mit {0} messen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>the runs give no correction: {0}</source>
        <translation>die Läufe ergeben keinen Ausgleich: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>it was not worked out</source>
        <translation>er wurde nicht berechnet</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>; take the one that is on off first, or record that it stays</source>
        <translation>; die sitzende erst abnehmen, oder protokollieren, dass sie bleibt</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>; {0} starts are left, {1} are needed</source>
        <translation>; {0} Starts sind noch frei, {1} sind nötig</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>{0} on "{1}"{2}{3}</source>
        <translation>{0} in „{1}“{2}{3}</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>put a small trial mass at any angle</source>
        <translation>eine kleine Testmasse unter beliebigem Winkel anbringen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>{0} N, {1} kgf at {2} r/min</source>
        <translation>{0} N, {1} kgf bei {2} r/min</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>put a trial mass of about {0} g ({1}) at any angle</source>
        <translation>eine Testmasse von etwa {0} g ({1}) unter beliebigem Winkel anbringen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>the coefficients changed by {0} % and {1}° in run "{2}": the machine does not answer alike; find out why, or stop here</source>
        <translation>die Koeffizienten haben sich in Lauf „{2}“ um {0} % und {1}° geändert: die Maschine antwortet nicht gleich; den Grund finden oder hier aufhören</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>the last two corrections cut the worst point by {0} % and {1} %: more of the same will not do; look for another cause, or stop here</source>
        <translation>die letzten zwei Ausgleiche senkten den schlechtesten Messpunkt um {0} % und {1} %: mehr davon hilft nicht; eine andere Ursache suchen oder hier aufhören</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>too weak</source>
        <translation>zu schwach</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>trial on "{0}": {1} standard deviations</source>
        <translation>Test in „{0}“: {1} Standardabweichungen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>{0}, and no mass would do with this repeatability: repeat initial and trial run, and average more</source>
        <translation>{0}, und bei dieser Wiederholbarkeit würde keine Masse genügen: Urlauf und Testlauf wiederholen und länger mitteln</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>, no more for the abort level at {0}</source>
        <translation>, wegen des Abschaltpegels bei {0} nicht mehr</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>{0}, and a larger one may bring {1} above its abort level of {2}: repeat initial and trial run, and average more</source>
        <translation>{0}, und eine größere kann {1} über den Abschaltpegel von {2} bringen: Urlauf und Testlauf wiederholen und länger mitteln</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>{0} are too weak; put on {1} times the mass, {2} g{3}, and repeat it</source>
        <translation>{0} sind zu schwach; das {1}-Fache der Masse anbringen, {2} g{3}, und wiederholen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>the next correction, {0}, is below the smallest piece of {1} g: stop here</source>
        <translation>der nächste Ausgleich, {0}, ist kleiner als das kleinste Stück von {1} g: hier aufhören</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>{0} {1}: {2} is to be preferred to all planes</source>
        <translation>{0} {1}: {2} ist allen Ebenen vorzuziehen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>the next correction, {0}, lies inside its own scatter: stop here, or repeat the run</source>
        <translation>der nächste Ausgleich, {0}, liegt in seiner eigenen Streuung: hier aufhören oder den Lauf wiederholen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>take all that is on off, trial and earlier masses,</source>
        <translation>alles abnehmen, Testmassen und frühere Massen,</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>take all trial masses off</source>
        <translation>alle Testmassen abnehmen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>{0} and put on</source>
        <translation>{0} und anbringen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>add to what is on</source>
        <translation>zu dem hinzufügen, was sitzt</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>put on, in the place of all that is on,</source>
        <translation>statt allem, was sitzt, anbringen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_masses.py"/>
        <source>{0}{1} {2} at {3}{4}° on "{5}"</source>
        <translation>{0}{1} {2} bei {3}{4}° in „{5}“</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>until the next run</source>
        <translation>bis zum nächsten Lauf</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>the job is closed; its report can be made, or the job reopened</source>
        <translation>der Auftrag ist abgeschlossen; sein Bericht lässt sich erstellen, oder der Auftrag wieder öffnen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0} reached {1} {2}, above its abort level of {3}: take off what was put on last or make it smaller, and find out why before the next start</source>
        <translation>{0} erreichte {1} {2}, über dem Abschaltpegel von {3}: das zuletzt Angebrachte abnehmen oder verkleinern und vor dem nächsten Start den Grund finden</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>the brief lacks what decides ({0}): {1}</source>
        <translation>in der Aufgabe fehlt, was entscheidet ({0}): {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>kind of rotor</source>
        <translation>Art des Rotors</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>running speed</source>
        <translation>Betriebsdrehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>correction planes</source>
        <translation>Ausgleichsebenen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>radius of {0}</source>
        <translation>Radius von {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>abort levels</source>
        <translation>Abschaltpegel</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>goal (grade, limit table or agreed limits)</source>
        <translation>Ziel (Gütestufe, Grenzwerttabelle oder vereinbarte Grenzwerte)</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>put back {0} and repeat that run</source>
        <translation>{0} zurückstellen und den Lauf wiederholen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>repeat a run as the rotor is now</source>
        <translation>einen Lauf mit dem Rotor wie jetzt wiederholen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0}: its turn is not known; {1} to show it</source>
        <translation>{0}: die Verdrehung ist nicht bekannt; {1}, um sie zu zeigen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>run "{0}"</source>
        <translation>Lauf „{0}“</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0} does not count: {1}</source>
        <translation>{0} zählt nicht: {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0} does not count: it is not trusted</source>
        <translation>{0} zählt nicht: er ist nicht verlässlich</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>it is not trusted</source>
        <translation>er ist nicht verlässlich</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>, phase swings by {0}°</source>
        <translation>, die Phase schwankt um {0}°</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source> by {0}°/min</source>
        <translation> um {0}°/min</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0}: a second source is stronger than 1x at {1}{2}: find and stop it</source>
        <translation>{0}: eine zweite Quelle ist bei {1} stärker als 1x{2}: suchen und abstellen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0}: {1} is {2}{3}: record {4} s</source>
        <translation>{0}: {1} ist {2}{3}: {4} s aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0}: the phase at {1} follows the speed{2}: hold it and repeat the run</source>
        <translation>{0}: die Phase bei {1} folgt der Drehzahl{2}: diese halten und den Lauf wiederholen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0}: {1} drifts{2}: let the machine settle, then record again</source>
        <translation>{0}: {1} driftet{2}: die Maschine einlaufen lassen, dann neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0}: 1x at {1} is as small as its scatter: record {2} s</source>
        <translation>{0}: 1x bei {1} ist so klein wie die Streuung: {2} s aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0}: {1} is {2}{3}: look for a loose part, process changes or a bad pulse</source>
        <translation>{0}: {1} ist {2}{3}: nach einem losen Teil, Prozessänderungen oder schlechtem Impuls suchen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>the goal is met ({0})</source>
        <translation>das Ziel ist erreicht ({0})</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>balancing was stopped</source>
        <translation>das Auswuchten wurde beendet</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0}: stop here and record the verdict</source>
        <translation>{0}: hier aufhören und das Ergebnis protokollieren</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0}: record the verdict</source>
        <translation>{0}: das Ergebnis protokollieren</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0}: have the verdict "{1}" accepted or refused by name</source>
        <translation>{0}: das Ergebnis „{1}“ mit Namen annehmen oder ablehnen lassen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>; checks not done: {0}</source>
        <translation>; nicht gemachte Prüfungen: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0} and nothing is left to do: close the job{1}</source>
        <translation>{0} und nichts ist mehr zu tun: den Auftrag abschließen{1}</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>no figures</source>
        <translation>keine Werte</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0} {1} ± {2} of {3}</source>
        <translation>{0} {1} ± {2} von {3}</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0} {1}{2} of {3} g·mm</source>
        <translation>{0} {1}{2} von {3} g·mm</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>the rotor is overhung and has {0} planes: balance it in "{1}" alone first, and add the other only if axial or far-bearing 1x stays above the goal</source>
        <translation>der Rotor ist fliegend gelagert und hat {0} Ebenen: zuerst allein in „{1}“ auswuchten, die andere nur nehmen, wenn 1x axial oder am fernen Lager über dem Ziel bleibt</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0} of {1} checks at standstill that fit this machine are open; next: {2}</source>
        <translation>{0} von {1} für diese Maschine passenden Prüfungen im Stillstand sind offen; nächste: {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>checks that need attention: {0}, first {1}: put it right before you balance</source>
        <translation>zu beachtende Prüfungen: {0}, zuerst {1}: vor dem Auswuchten in Ordnung bringen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>no hook-up yet: say what is wired to each input and where it sits</source>
        <translation>noch kein Anschluss: angeben, was an welchem Eingang liegt und wo es sitzt</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>the signals were not checked yet: check pulse and sensors once</source>
        <translation>die Signale wurden noch nicht geprüft: Impuls und Sensoren einmal prüfen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>something that blocks</source>
        <translation>etwas, das alles aufhält</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>the last signal check found: {0}; mend it and check again</source>
        <translation>die letzte Signalprüfung fand: {0}; beheben und neu prüfen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>with this machine stopped, neighbours make {0} % of the goal at {1}: stop them, or keep them the same in all runs</source>
        <translation>bei stehender Maschine machen Nachbarn {0} % des Ziels bei {1} aus: abstellen oder in allen Läufen gleich halten</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>the rotor was cleaned or mended: take a new initial run; the earlier runs still tell the coefficients</source>
        <translation>der Rotor wurde gereinigt oder repariert: einen neuen Urlauf machen; die früheren Läufe liefern weiter die Koeffizienten</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>take the initial run, without masses, under the conditions of all later ones</source>
        <translation>den Urlauf machen, ohne Massen, unter den Bedingungen aller späteren Läufe</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>1x makes only {0} % of the vibration's square at {1}: other orders dominate, which balancing does not change</source>
        <translation>1x macht nur {0} % vom Quadrat der Schwingung bei {1} aus: andere Ordnungen überwiegen, und die ändert das Auswuchten nicht</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0} is likelier than unbalance{1}: {2}</source>
        <translation>{0} ist wahrscheinlicher als Unwucht{1}: {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>running speed {0} r/min is {1} % from the resonance at {2} r/min: move the speed or the support before you balance, or take half the trial mass in any direction</source>
        <translation>die Betriebsdrehzahl {0} r/min liegt {1} % neben der Resonanz bei {2} r/min: vor dem Auswuchten Drehzahl oder Abstützung verlegen, oder die halbe Testmasse in beliebiger Richtung nehmen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0} is likely{1}: {2}</source>
        <translation>{0} ist wahrscheinlich{1}: {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>stop, restart and repeat the initial run before the first trial: 1 run shows no repeatability</source>
        <translation>anhalten, neu starten und vor dem ersten Test den Urlauf wiederholen: 1 Lauf zeigt keine Wiederholbarkeit</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>does not repeat</source>
        <translation>wiederholt sich nicht</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>the initial state moved between "{0}" and "{1}": {2} by {3} % and {4}°; find out why, let it settle, and repeat the initial run</source>
        <translation>der Urzustand hat sich zwischen „{0}“ und „{1}“ verschoben: {2} um {3} % und {4}°; den Grund finden, einlaufen lassen und den Urlauf wiederholen</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>coefficients of an earlier visit need {0}</source>
        <translation>Koeffizienten eines früheren Einsatzes brauchen {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>one plane alone needs {0}</source>
        <translation>eine Ebene allein braucht {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>a trial opposite the heavy spot that stays on is a first correction</source>
        <translation>ein Test gegenüber der schweren Stelle, der dran bleibt, ist ein erster Ausgleich</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0} starts are left and the usual way needs {1}: {2}</source>
        <translation>{0} Starts sind noch frei, und der übliche Weg braucht {1}: {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>{0} reached {1} {2}, above its abort level of {3}, with nothing put on: find out why, and agree with the owner what is done, before the next start</source>
        <translation>{0} erreichte {1} {2}, über dem Abschaltpegel von {3}, ohne dass etwas angebracht war: vor dem nächsten Start den Grund finden und mit dem Betreiber vereinbaren, was geschieht</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>the running speed of {0} r/min is above the {1} r/min that the rotor must never exceed: correct what is wrong in the brief</source>
        <translation>die Betriebsdrehzahl von {0} r/min liegt über den {1} r/min, die der Rotor nie überschreiten darf: in der Aufgabe berichtigen, was falsch ist</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>the {0} at "{1}" watches nothing: the hook-up has no such point; there is {2}</source>
        <translation>{0} an „{1}“ überwacht nichts: der Anschluss hat diesen Messpunkt nicht; es gibt {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/next_steps.py"/>
        <source>abort level</source>
        <translation>Abschaltpegel</translation>
    </message>
    <message>
        <location filename="../../../solver/progress.py"/>
        <source>taken off</source>
        <translation>abgenommen</translation>
    </message>
    <message>
        <location filename="../../../solver/progress.py"/>
        <source>{0} of {1} trial masses taken off are not noted as weighed back in</source>
        <translation>{0} von {1} abgenommenen Testmassen sind nicht als zurückgewogen vermerkt</translation>
    </message>
    <message>
        <location filename="../../../solver/progress.py"/>
        <source>not fixed for good, or not said how: {0}</source>
        <translation>nicht endgültig befestigt, oder nicht angegeben wie: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/progress.py"/>
        <source>no photo yet of {0}</source>
        <translation>noch kein Foto von {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/progress.py"/>
        <source>masses or their fixing changed since the last run that counts</source>
        <translation>Massen oder ihre Befestigung sind seit dem letzten zählenden Lauf geändert</translation>
    </message>
    <message>
        <location filename="../../../solver/progress.py"/>
        <source>not comparable</source>
        <translation>nicht vergleichbar</translation>
    </message>
    <message>
        <location filename="../../../solver/progress.py"/>
        <source>"{0}" and "{1}": {2}</source>
        <translation>„{0}“ und „{1}“: {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/progress.py"/>
        <source>the broadband level</source>
        <translation>der Summenpegel</translation>
    </message>
    <message>
        <location filename="../../../solver/progress.py"/>
        <source>{0}: {1} is {2} {3}, and was {4}</source>
        <translation>{0}: {1} ist {2} {3}, und war {4}</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>at the signal check</source>
        <translation>bei der Signalprüfung</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0}: the verdict on 1x is {1}{2}</source>
        <translation>{0}: das Urteil über 1x lautet {1}{2}</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>the measurement is not trusted, and does not say why</source>
        <translation>die Messung ist nicht verlässlich und sagt nicht, warum</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>the pulse was taken at its {0} edge, {1} at its {2}</source>
        <translation>der Impuls wurde an der Flanke „{0}“ genommen, {1} an „{2}“</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>the pulse is high for {0}° and was for {1}° {2}</source>
        <translation>der Impuls ist {0}° lang hoch und war es {1}° {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>the mark covers {0}° but covered {1}° {2}</source>
        <translation>die Marke bedeckt {0}°, bedeckte aber {1}° {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0}: not measured, but in "{1}"</source>
        <translation>{0}: nicht gemessen, aber in „{1}“</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0}: measured, but not in "{1}"</source>
        <translation>{0}: gemessen, aber nicht in „{1}“</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>vectors are in {0}, in "{1}" in {2}</source>
        <translation>Zeiger sind in {0}, in „{1}“ in {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>the speed reads {0} r/min, {1} times {2}</source>
        <translation>die Drehzahl zeigt {0} r/min, das {1}-Fache von {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0} r/min is {1} % off the {2} r/min of "{3}"</source>
        <translation>{0} r/min liegt {1} % neben den {2} r/min von „{3}“</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0}, limit {1} %</source>
        <translation>{0}, Grenze {1} %</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0}; up to {1} % is accepted without caution</source>
        <translation>{0}; bis {1} % wird ohne Vorbehalt angenommen</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>that of "{0}"</source>
        <translation>der von „{0}“</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>the brief's</source>
        <translation>der aus der Aufgabe</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0}: by the sweep 1x changes by {1} % and {2}° from {3} to {4} r/min, limit {5} % and {6}°</source>
        <translation>{0}: nach dem Durchlauf ändert sich 1x um {1} % und {2}° von {3} bis {4} r/min, Grenze {5} % und {6}°</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0} was chosen as one that matters, and is not noted</source>
        <translation>{0} wurde als wichtig gewählt und ist nicht notiert</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>not comparable: {0} is not noted, and was {1}{2} in "{3}"</source>
        <translation>nicht vergleichbar: {0} ist nicht notiert und war {1}{2} in „{3}“</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>not comparable with "{0}": {1}{2}</source>
        <translation>nicht vergleichbar mit „{0}“: {1}{2}</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>how long the run was measured is not noted</source>
        <translation>wie lange gemessen wurde, ist nicht notiert</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0} revolutions in {1} s: a run takes {2} and {3} s; record {4} s</source>
        <translation>{0} Umdrehungen in {1} s: ein Lauf braucht {2} und {3} s; {4} s aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0}: {1} s is less than one beat of {2} s</source>
        <translation>{0}: {1} s sind weniger als eine Schwebung von {2} s</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>1x is still moving</source>
        <translation>1x bewegt sich noch</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0} min after the start, "{1}" was {2} min after it</source>
        <translation>{0} min nach dem Start, „{1}“ war {2} min danach</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>started {0}, for "{1}" started {2}</source>
        <translation>{0} gestartet, für „{1}“ {2} gestartet</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0}: 1x moved by {1} % and {2}° in the {3} min since "{4}", more than {5} % or {6}° in {7} min</source>
        <translation>{0}: 1x verschob sich in den {3} min seit „{4}“ um {1} % und {2}°, mehr als {5} % oder {6}° in {7} min</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>"{0}": its turn is not known, so that runs since then are kept apart</source>
        <translation>„{0}“: die Verdrehung ist nicht bekannt, so dass Läufe seither getrennt bleiben</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0} reached {1} {2}, abort level {3} {4}</source>
        <translation>{0} erreichte {1} {2}, Abschaltpegel {3} {4}</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0}: no plane of the brief; there is {1}</source>
        <translation>{0}: keine Ebene der Aufgabe; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>the run says {0}, the record has {1} on the rotor</source>
        <translation>der Lauf nennt {0}, nach dem Protokoll sitzt {1} auf dem Rotor</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0}: reads 0</source>
        <translation>{0}: zeigt 0</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0}: fell from {1} to {2} {3} with the same masses on</source>
        <translation>{0}: fiel von {1} auf {2} {3} mit denselben Massen</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>the last signal check found: {0}</source>
        <translation>die letzte Signalprüfung fand: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/run_checks.py"/>
        <source>{0} and {1}: each reads what the other read in "{2}" with the same masses on</source>
        <translation>{0} und {1}: jeder zeigt, was der andere in „{2}“ mit denselben Massen zeigte</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.py"/>
        <source>new initial state</source>
        <translation>neuer Urzustand</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.py"/>
        <source>re-reference run with {0}: no earlier run at this speed had the same masses; measured were: {1}</source>
        <translation>Bezugslauf mit {0}: kein früherer Lauf bei dieser Drehzahl hatte dieselben Massen; gemessen wurden: {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.py"/>
        <source>re-reference run: has no point in common with "{0}" that tells; measure the same points</source>
        <translation>Bezugslauf: hat mit „{0}“ keinen aussagekräftigen Messpunkt gemeinsam; dieselben Punkte messen</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.py"/>
        <source>{0}: turned by {1} against "{2}" with the same masses on</source>
        <translation>{0}: um {1} verdreht gegen „{2}“ mit denselben Massen</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.py"/>
        <source>; but {0} changed its amplitude beyond the scatter, so that the rotor is not as it was then</source>
        <translation>; aber {0} hat die Amplitude über die Streuung hinaus geändert, so dass der Rotor nicht mehr ist wie damals</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.py"/>
        <source>; but the points do not agree ({0}): a sensor moved too, or the rotor is not as it was then</source>
        <translation>; aber die Messpunkte stimmen nicht überein ({0}): auch ein Sensor wurde bewegt, oder der Rotor ist nicht mehr wie damals</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.py"/>
        <source>; one point alone has nothing to check it by</source>
        <translation>; ein Messpunkt allein hat nichts zum Vergleich</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.py"/>
        <source>swap test: {0} was not measured with the same masses before; exchange the two sensors right after a run, with nothing else changed</source>
        <translation>Tauschprobe: {0} wurde mit denselben Massen noch nicht gemessen; die zwei Sensoren gleich nach einem Lauf tauschen, ohne sonst etwas zu ändern</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.py"/>
        <source>{0} reads {1} ± {2} % and {3} ± {4}° against {5}</source>
        <translation>{0} zeigt {1} ± {2} % und {3} ± {4}° gegen {5}</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.py"/>
        <source>{0} and {1} read what they read before: the sensors were not exchanged</source>
        <translation>{0} und {1} lesen dasselbe wie zuvor: die Sensoren wurden nicht getauscht</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.py"/>
        <source>{0}, but not alike at the two places: the machine changed</source>
        <translation>{0}, aber an beiden Stellen nicht gleich: die Maschine hat sich geändert</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.py"/>
        <source>{0}: within the scatter; what the points showed is the machine's</source>
        <translation>{0}: innerhalb der Streuung; was die Messpunkte zeigten, kommt von der Maschine</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.py"/>
        <source>{0}: one of the two sensors, cables or inputs is wrong, or a sensitivity, delay or direction in the hook-up</source>
        <translation>{0}: einer der zwei Sensoren, Kabel oder Eingänge ist falsch, oder Empfindlichkeit, Verzug oder Richtung im Anschluss</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>unless allowed</source>
        <translation>wenn nicht erlaubt</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>repeat the run when it is steady, or use it anyway and say why</source>
        <translation>den Lauf wiederholen, wenn es stabil ist, oder ihn trotzdem nutzen und sagen, warum</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>measure its recording again with the first run's edge, or say what changed at the mark or pulse sensor</source>
        <translation>seine Aufnahme mit der Flanke des ersten Laufs neu auswerten, oder sagen, was sich an Marke oder Impulssensor änderte</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>the pulse came out upside down: put threshold and sensor back, or say what changed at the mark or pulse sensor</source>
        <translation>der Impuls kam umgekehrt heraus: Schwelle und Sensor zurückstellen, oder sagen, was sich an Marke oder Impulssensor änderte</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>put mark, sensor distance and threshold back and repeat the run, or say what changed at the mark or pulse sensor</source>
        <translation>Marke, Sensorabstand und Schwelle zurückstellen und den Lauf wiederholen, oder sagen, was sich an Marke oder Impulssensor änderte</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>measure the same points as in the first run, or solve without that point</source>
        <translation>dieselben Messpunkte messen wie im ersten Lauf, oder ohne diesen Punkt rechnen</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>they are kept and not solved with; the first run did not have them</source>
        <translation>sie bleiben erhalten und werden nicht mitgerechnet; der erste Lauf hatte sie nicht</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>measure its recording again in the first run's unit</source>
        <translation>seine Aufnahme in der Einheit des ersten Laufs neu auswerten</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>add the plane to the brief, or mend the plane of the mass</source>
        <translation>die Ebene in der Aufgabe ergänzen oder die Ebene der Masse berichtigen</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>repeat the run at the first run's speed, or allow it and say why</source>
        <translation>den Lauf bei der Drehzahl des ersten wiederholen, oder erlauben und sagen, warum</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>hold the speed closer in the next run: fixed setpoint by hand, control off</source>
        <translation>die Drehzahl im nächsten Lauf genauer halten: fester Sollwert von Hand, Regelung aus</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>repeat the run closer to the first run's speed, or allow it and say why</source>
        <translation>den Lauf näher an der Drehzahl des ersten wiederholen, oder erlauben und sagen, warum</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>look at the pulse: a second bright spot, key or scratch doubles it (blacken it), a faint mark halves it (renew it)</source>
        <translation>den Impuls ansehen: ein zweiter heller Fleck, eine Passfeder oder ein Kratzer verdoppelt ihn (schwärzen), eine matte Marke halbiert ihn (erneuern)</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>bring the condition back and repeat the run, or allow it and say why</source>
        <translation>die Bedingung wiederherstellen und den Lauf wiederholen, oder erlauben und sagen, warum</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>note it with every run from now on: without it runs cannot be compared</source>
        <translation>sie von jetzt an bei jedem Lauf notieren: ohne sie sind Läufe nicht vergleichbar</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>record longer</source>
        <translation>länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>note seconds and revolutions with the run</source>
        <translation>Sekunden und Umdrehungen beim Lauf notieren</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>let the machine run on until 1x moves less than 2 % and 2° in five minutes, then repeat the run</source>
        <translation>die Maschine weiterlaufen lassen, bis 1x sich in fünf Minuten weniger als 2 % und 2° bewegt, dann den Lauf wiederholen</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>measure the same minutes after each start, or let 1x settle each time</source>
        <translation>nach jedem Start gleich viele Minuten später messen, oder 1x jedes Mal einlaufen lassen</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>start as cold or as warm as for the first run, or let 1x settle each time</source>
        <translation>so kalt oder warm starten wie beim ersten Lauf, oder 1x jedes Mal einlaufen lassen</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>repeat a run in a mass state already measured: it shows the turn, and the earlier runs serve again</source>
        <translation>einen Lauf in einem schon gemessenen Massenzustand wiederholen: er zeigt die Verdrehung, und die früheren Läufe taugen wieder</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>stop the machine; take the last masses off or make them smaller, and find out why before the next start</source>
        <translation>die Maschine abstellen; die letzten Massen abnehmen oder verkleinern und vor dem nächsten Start den Grund finden</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>mend the masses of the run, or the record of what was put on and taken off</source>
        <translation>die Massen des Laufs berichtigen, oder das Protokoll dessen, was angebracht und abgenommen wurde</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>look at sensor, cable and supply of this point, wiggle the cable, and repeat the run</source>
        <translation>Sensor, Kabel und Versorgung dieses Messpunkts ansehen, am Kabel wackeln und den Lauf wiederholen</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>mend it, check the signals again, and look at this run with that in mind</source>
        <translation>beheben, die Signale neu prüfen und diesen Lauf daraufhin ansehen</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>tap each sensor by hand and see which input answers; if they are exchanged, put the cables back and repeat the run</source>
        <translation>jeden Sensor von Hand beklopfen und sehen, welcher Eingang antwortet; sind sie vertauscht, die Kabel zurückstecken und den Lauf wiederholen</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>find out what moved and record the change of reference with this turn: later runs then fit the earlier ones, and nothing is measured again</source>
        <translation>herausfinden, was sich bewegte, und die Änderung des Bezugs mit dieser Verdrehung protokollieren: spätere Läufe passen dann zu den früheren, und nichts wird neu gemessen</translation>
    </message>
    <message>
        <location filename="../../../solver/run_rules.toml"/>
        <source>look at this sensor's mount and direction; record the change of reference for this point with this turn</source>
        <translation>Befestigung und Richtung dieses Sensors ansehen; die Änderung des Bezugs für diesen Messpunkt mit dieser Verdrehung protokollieren</translation>
    </message>
    <message>
        <location filename="../../../solver/run_vectors.py"/>
        <source>new run</source>
        <translation>neuer Lauf</translation>
    </message>
    <message>
        <location filename="../../../solver/run_vectors.py"/>
        <source>{0} g at {1}° on "{2}"</source>
        <translation>{0} g bei {1}° in „{2}“</translation>
    </message>
    <message>
        <location filename="../../../solver/run_vectors.py"/>
        <source>no mass</source>
        <translation>keine Masse</translation>
    </message>
    <message>
        <location filename="../../../solver/state.py"/>
        <source>the job is closed; reopen it first</source>
        <translation>der Auftrag ist abgeschlossen; erst wieder öffnen</translation>
    </message>
    <message>
        <location filename="../../../solver/state.py"/>
        <source>{0} is a kind this program does not know; it is kept and left out</source>
        <translation>{0} ist von einer Art, die dieses Programm nicht kennt; es bleibt erhalten und wird nicht genutzt</translation>
    </message>
    <message>
        <location filename="../../../solver/state.py"/>
        <source>the beginning of the job cannot be withdrawn; begin a new job</source>
        <translation>der Anfang des Auftrags lässt sich nicht zurückziehen; einen neuen beginnen</translation>
    </message>
    <message>
        <location filename="../../../solver/state.py"/>
        <source>there is no entry {0} before it</source>
        <translation>davor gibt es keinen Eintrag {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/state.py"/>
        <source>entry {0} is a {1}, not a {2}</source>
        <translation>Eintrag {0} ist {1}, nicht {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/state.py"/>
        <source>the job was begun before</source>
        <translation>der Auftrag wurde schon begonnen</translation>
    </message>
    <message>
        <location filename="../../../solver/state.py"/>
        <source>there is a run {0} already; give it another name</source>
        <translation>Lauf {0} gibt es schon; einen anderen Namen geben</translation>
    </message>
    <message>
        <location filename="../../../solver/state.py"/>
        <source>none of the pieces of entry {0} is on the rotor</source>
        <translation>keins der Stücke von Eintrag {0} sitzt auf dem Rotor</translation>
    </message>
    <message>
        <location filename="../../../solver/state.py"/>
        <source>entry {0} has the pieces {1} on the rotor, not {2}</source>
        <translation>von Eintrag {0} sitzen die Stücke {1} auf dem Rotor, nicht {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/state.py"/>
        <source>turn_deg: is what it is to say of the earlier change; give it</source>
        <translation>turn_deg: sagt, was von der früheren Änderung gelten soll; angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/state.py"/>
        <source>line {0} of the record is not as it was written</source>
        <translation>Zeile {0} des Protokolls ist nicht so, wie sie geschrieben wurde</translation>
    </message>
    <message>
        <location filename="../../../solver/state.py"/>
        <source>left out: {0}</source>
        <translation>weggelassen: {0}</translation>
    </message>
</context>
</TS>
