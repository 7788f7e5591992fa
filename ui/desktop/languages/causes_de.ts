<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>stillshaft</name>
    <message>
        <location filename="../../../solver/diagnosis.py"/>
        <source>line frequency</source>
        <translation>Netzfrequenz</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis.py"/>
        <source>{0}: "{1}": must be {2}</source>
        <translation>{0}: „{1}“: muss {2} sein</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis.py"/>
        <source>a figure</source>
        <translation>eine Zahl</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis.py"/>
        <source>not told</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis.py"/>
        <source>the phase moves and the pulse has not been looked at as a whole: rule the pulse out first</source>
        <translation>die Phase bewegt sich, und der Impuls wurde noch nicht im Ganzen angesehen: zuerst den Impuls ausschließen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis.py"/>
        <source>nothing was measured or answered yet: the order is only how common the causes are</source>
        <translation>noch nichts gemessen oder beantwortet: die Reihenfolge sagt nur, wie häufig die Ursachen sind</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis.py"/>
        <source>{0} and {1} cannot be told apart by what was measured: see the next checks</source>
        <translation>{0} und {1} sind nach dem Gemessenen nicht zu unterscheiden: siehe die nächsten Prüfungen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis.py"/>
        <source>{0}; not told from it: {1}</source>
        <translation>{0}; davon nicht zu unterscheiden: {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis.py"/>
        <source>{0}: is a figure, but must be {1}</source>
        <translation>{0}: ist eine Zahl, muss aber {1} sein</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis.py"/>
        <source>{0}: {1} between {2} and {3}: must be a finite figure in its interval</source>
        <translation>{0}: {1} zwischen {2} und {3}: muss eine endliche Zahl in ihrem Bereich sein</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis.py"/>
        <source>"{0}": is no quantity of the rules; known are {1}</source>
        <translation>„{0}“: ist keine Größe der Regeln; bekannt sind {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>weak {0}, strong {1}: must be above 1, strong no less than weak</source>
        <translation>weak {0}, strong {1}: müssen größer als 1 sein, strong nicht kleiner als weak</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>cause, quantity, fact: a key is used twice; each needs its own</source>
        <translation>cause, quantity, fact: ein Schlüssel kommt zweimal vor; jeder braucht seinen eigenen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>cause: there is none that every machine may have; add a [[cause]] without needs</source>
        <translation>cause: es gibt keine, die jede Maschine haben kann; eine [[cause]] ohne needs hinzufügen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>cause "{0}": odds {1} must be above 0</source>
        <translation>Ursache „{0}“: odds {1} muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>cause "{0}": part_of "{1}" is no cause that stands for itself and has no needs</source>
        <translation>Ursache „{0}“: part_of „{1}“ ist keine Ursache, die für sich steht und keine needs hat</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>cause "{0}"</source>
        <translation>Ursache „{0}“</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>quantity "{0}"</source>
        <translation>Größe „{0}“</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>quantity "{0}", row {1}</source>
        <translation>Größe „{0}“, Zeile {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>{0}: "{1}" is no cause</source>
        <translation>{0}: „{1}“ ist keine Ursache</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>{0}: names a cause twice, by itself or in a group</source>
        <translation>{0}: nennt eine Ursache zweimal, allein oder in einer Gruppe</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>{0}: "{1}" is none of the words of this quantity</source>
        <translation>{0}: „{1}“ ist keines der Wörter dieser Größe</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>{0}: give words where the quantity has words, else a range</source>
        <translation>{0}: Wörter angeben, wo die Größe Wörter hat, sonst einen Bereich</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>quantity "{0}": two rows overlap; a figure must lie in one</source>
        <translation>Größe „{0}“: zwei Zeilen überlappen; eine Zahl muss in einer liegen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>cause "{0}": before "{1}", which is no cause</source>
        <translation>Ursache „{0}“: vor „{1}“, das keine Ursache ist</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>quantity "{0}": reads "{1}": only {2} may stand in braces</source>
        <translation>Größe „{0}“: reads „{1}“: nur {2} darf in Klammern stehen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.py"/>
        <source>{0}: {1} = {2}: no fact or quantity has such words</source>
        <translation>{0}: {1} = {2}: kein fact und keine Größe hat solche Wörter</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>bent shaft</source>
        <translation>verbogene Welle</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>thermal bow</source>
        <translation>thermische Durchbiegung</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>loose part</source>
        <translation>loses Teil</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>balance, once what speaks for other causes is looked into</source>
        <translation>auswuchten, sobald angesehen ist, was für andere Ursachen spricht</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>static unbalance: one heavy spot, both bearings move together</source>
        <translation>statische Unwucht: eine schwere Stelle, beide Lager bewegen sich gemeinsam</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>one plane may do; begin with the static part</source>
        <translation>eine Ebene kann genügen; mit dem statischen Anteil beginnen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>between bearings</source>
        <translation>zwischen den Lagern</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>couple unbalance: two opposed heavy spots</source>
        <translation>Momentenunwucht: zwei gegenüberliegende schwere Stellen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>two planes; the response to a trial mass decides</source>
        <translation>zwei Ebenen; die Antwort auf eine Testmasse entscheidet</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>static and couple unbalance together</source>
        <translation>statische und Momentenunwucht zusammen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>two planes</source>
        <translation>zwei Ebenen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>unbalance of an overhung rotor</source>
        <translation>Unwucht eines fliegend gelagerten Rotors</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>one plane first for a disc; a couple only if axial or far-bearing 1x stays above the goal</source>
        <translation>bei einer Scheibe zuerst eine Ebene; den Momentenanteil nur, wenn 1x axial oder am fernen Lager über dem Ziel bleibt</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>measure the run-out with a dial gauge; balancing hides a bend at one speed only</source>
        <translation>die Rundlaufabweichung mit der Messuhr messen; Auswuchten verdeckt eine Verbiegung nur bei einer Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>misalignment, or a coupling fault</source>
        <translation>Ausrichtfehler oder Kupplungsfehler</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>check alignment, coupling and pipe strain before balancing</source>
        <translation>vor dem Auswuchten Ausrichtung, Kupplung und Rohrspannungen prüfen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>check bolts, fits, cracks and grouting before balancing; judge what is left again after it</source>
        <translation>vor dem Auswuchten Schrauben, Sitze, Risse und Verguss prüfen; danach neu beurteilen, was bleibt</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>resonance near running speed</source>
        <translation>Resonanz nahe der Betriebsdrehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>turning force</source>
        <translation>umlaufende Kraft</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>move the speed or the support first; a balance holds for this speed and temperature only</source>
        <translation>zuerst Drehzahl oder Abstützung verlegen; eine Auswuchtung hält nur für diese Drehzahl und Temperatur</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>eccentric pulley</source>
        <translation>exzentrische Riemenscheibe</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>measure the pulley's run-out; true, bore or replace it</source>
        <translation>die Rundlaufabweichung der Scheibe messen; richten, ausdrehen oder ersetzen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>belts: worn, slack, mismatched, or their own resonance</source>
        <translation>Riemen: verschlissen, schlaff, ungleich, oder ihre eigene Resonanz</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>look at belts, tension and pulley alignment; replace a set as a whole</source>
        <translation>Riemen, Spannung und Flucht der Scheiben ansehen; einen Satz immer ganz ersetzen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>soft foot</source>
        <translation>Kippfuß</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>soft foot or a distorted base</source>
        <translation>Kippfuß oder verspannter Rahmen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>loosen and tighten one foot after the other with the machine isolated, feeler gauge and dial gauge at hand; shim</source>
        <translation>bei freigeschalteter Maschine einen Fuß nach dem anderen lösen und anziehen, mit Fühlerlehre und Messuhr; unterlegen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>rub of the rotor on a seal or casing</source>
        <translation>Anstreifen des Rotors an Dichtung oder Gehäuse</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>look for traces and clearances; a light rub bends the shaft by heat</source>
        <translation>nach Spuren und Spalten sehen; leichtes Anstreifen verbiegt die Welle durch Wärme</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>bearing wear</source>
        <translation>Lagerverschleiß</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>worn or damaged bearings</source>
        <translation>verschlissene oder beschädigte Lager</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>check play, temperature and noise; bearing frequencies and enveloping tell more than this</source>
        <translation>Spiel, Temperatur und Geräusch prüfen; Lagerfrequenzen und Hüllkurve sagen mehr als dies</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>flow or process forces</source>
        <translation>Kräfte aus Strömung oder Prozess</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>change load, damper or vane and see what follows</source>
        <translation>Last, Klappe oder Leitschaufel ändern und sehen, was folgt</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>follow the 1x vector from a cold start until it settles; balance at working temperature, after the same minutes</source>
        <translation>den 1x-Zeiger vom Kaltstart bis zum Einlaufen verfolgen; bei Betriebstemperatur auswuchten, nach gleich vielen Minuten</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>electrical forces of the motor</source>
        <translation>elektrische Kräfte des Motors</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>cut the power while recording: what is electrical drops at once; have a competent person look at the motor</source>
        <translation>während der Aufnahme den Strom abschalten: was elektrisch ist, fällt sofort ab; den Motor von einer befähigten Person ansehen lassen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a neighbour machine</source>
        <translation>eine Nachbarmaschine</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>measure with this machine stopped; stop the neighbour, or keep it the same in all runs</source>
        <translation>bei stehender Maschine messen; den Nachbarn abstellen oder in allen Läufen gleich halten</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>loose impeller, hub or piece on the rotor</source>
        <translation>loses Laufrad, lose Nabe oder loses Stück am Rotor</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>check the seat, key and fastening with the machine isolated; no balance holds before that</source>
        <translation>Sitz, Passfeder und Befestigung bei freigeschalteter Maschine prüfen; vorher hält keine Auswuchtung</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>liquid, dust or a loose piece inside the rotor</source>
        <translation>Flüssigkeit, Staub oder ein loses Stück im Rotor</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>open, drain and clean hollow parts; no balance holds before that</source>
        <translation>Hohlräume öffnen, entleeren und reinigen; vorher hält keine Auswuchtung</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>build-up that breaks off</source>
        <translation>Belag, der abbricht</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>clean the rotor as a whole, then take a new initial run</source>
        <translation>den Rotor im Ganzen reinigen, dann einen neuen Urlauf machen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>bad pulse</source>
        <translation>schlechter Impuls</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a bad pulse: the phase moves, not the rotor</source>
        <translation>ein schlechter Impuls: die Phase bewegt sich, nicht der Rotor</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>see to the pulse first: mark, distance, light, bracket, cable</source>
        <translation>zuerst den Impuls in Ordnung bringen: Marke, Abstand, Licht, Halter, Kabel</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>1x holds {0} % of the mean square</source>
        <translation>1x trägt {0} % des mittleren Quadrats</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>record 15 s or more at running speed and look at the spectrum</source>
        <translation>15 s oder mehr bei Betriebsdrehzahl aufnehmen und das Spektrum ansehen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>what sits on the rotor shakes once a revolution</source>
        <translation>was auf dem Rotor sitzt, schüttelt einmal je Umdrehung</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>most of the vibration does not come once a revolution</source>
        <translation>der größte Teil der Schwingung kommt nicht einmal je Umdrehung</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>2x is {0} of 1x</source>
        <translation>2x ist das {0}-Fache von 1x</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a force that turns with the rotor makes little 2x</source>
        <translation>eine mit dem Rotor umlaufende Kraft macht wenig 2x</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a coupling that is bent twice a revolution makes 2x</source>
        <translation>eine zweimal je Umdrehung gebogene Kupplung macht 2x</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>{0} of 2x to 5x are above 0.2 of 1x</source>
        <translation>{0} von 2x bis 5x liegen über 0.2 von 1x</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>motion that is cut or knocks makes a row of multiples</source>
        <translation>begrenzte oder stoßende Bewegung ergibt eine Reihe von Vielfachen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>motion that is cut or knocks makes a row of multiples; judged again after balancing</source>
        <translation>begrenzte oder stoßende Bewegung ergibt eine Reihe von Vielfachen; nach dem Auswuchten neu beurteilen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the strongest of 1/3x, 1/2x, 2/3x and 3/2x is {0} of 1x</source>
        <translation>das Stärkste von 1/3x, 1/2x, 2/3x und 3/2x ist das {0}-Fache von 1x</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>record 30 s or more at running speed and look at the spectrum below 1x</source>
        <translation>30 s oder mehr bei Betriebsdrehzahl aufnehmen und das Spektrum unter 1x ansehen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>what touches or lifts off every second or third revolution makes fractions of the speed</source>
        <translation>was jede zweite oder dritte Umdrehung anstößt oder abhebt, ergibt Bruchteile der Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>{0} % of the mean square follow no order, belt or neighbour known</source>
        <translation>{0} % des mittleren Quadrats folgen keiner bekannten Ordnung, keinem Riemen oder Nachbarn</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>bearings and flow shake at frequencies of their own, or at none</source>
        <translation>Lager und Strömung schütteln mit eigenen Frequenzen, oder mit keiner</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>{0} % of the mean square lie below 1x</source>
        <translation>{0} % des mittleren Quadrats liegen unter 1x</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>stall, surging and turbulence are slower than the rotor</source>
        <translation>Strömungsabriss, Pumpen und Turbulenz sind langsamer als der Rotor</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>stall, turbulence, belts and liquid inside are slower than the rotor</source>
        <translation>Strömungsabriss, Turbulenz, Riemen und Flüssigkeit im Innern sind langsamer als der Rotor</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>{0} % of the mean square follow its frequency</source>
        <translation>{0} % des mittleren Quadrats folgen seiner Frequenz</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>name the neighbours and their speeds, then look at the spectrum</source>
        <translation>die Nachbarn und ihre Drehzahlen angeben, dann das Spektrum ansehen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>what runs at a known frequency beside the shaft</source>
        <translation>was mit bekannter Frequenz neben der Welle läuft</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the strongest of the first four belt frequencies is {0} of 1x</source>
        <translation>das Stärkste der ersten vier Riemenfrequenzen ist das {0}-Fache von 1x</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>enter pulleys and belt length, then look at the spectrum</source>
        <translation>Scheiben und Riemenlänge eingeben, dann das Spektrum ansehen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a belt fault shakes at the belt's own frequency and its multiples</source>
        <translation>ein Riemenfehler schüttelt mit der Riemenfrequenz und ihren Vielfachen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>vibration at the speed of the other pulley is {0} of 1x</source>
        <translation>die Schwingung bei der Drehzahl der anderen Scheibe ist das {0}-Fache von 1x</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>enter both pulleys, then look at the spectrum at the other one's speed</source>
        <translation>beide Scheiben eingeben, dann das Spektrum bei der Drehzahl der anderen ansehen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the other pulley or its shaft shakes the machine</source>
        <translation>die andere Scheibe oder ihre Welle schüttelt die Maschine</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>vibration at twice line frequency is {0} of 1x</source>
        <translation>die Schwingung bei doppelter Netzfrequenz ist das {0}-Fache von 1x</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>look at the spectrum at 100 or 120 Hz with lines of 0.5 Hz or finer</source>
        <translation>das Spektrum bei 100 oder 120 Hz ansehen, mit Linien von 0.5 Hz oder feiner</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the field pulls twice in a period of the line</source>
        <translation>das Feld zieht zweimal je Netzperiode</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>sidebands of the pole-pass frequency about 1x are {0} of 1x</source>
        <translation>die Seitenbänder der Polschlupffrequenz um 1x sind das {0}-Fache von 1x</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>enter line frequency and number of poles; record a minute, for lines of 0.1 Hz</source>
        <translation>Netzfrequenz und Polzahl eingeben; eine Minute aufnehmen, für Linien von 0.1 Hz</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>broken rotor bars and an uneven air gap vary with the slip times the number of poles</source>
        <translation>gebrochene Läuferstäbe und ungleicher Luftspalt ändern sich mit Schlupf mal Polzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>horizontal 1x is {0} times vertical</source>
        <translation>1x waagerecht ist das {0}-Fache von senkrecht</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>measure 1x horizontally and vertically at the same bearing</source>
        <translation>1x am selben Lager waagerecht und senkrecht messen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>vertical larger: looseness, soft foot, or a vertical resonance</source>
        <translation>senkrecht größer: Lockerheit, Kippfuß oder eine senkrechte Resonanz</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a machine is usually one to three times as soft sideways</source>
        <translation>eine Maschine ist seitlich meist ein- bis dreimal so weich</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>above about 4: a horizontal resonance, looseness, or a soft support</source>
        <translation>über etwa 4: waagerechte Resonanz, Lockerheit oder weiche Abstützung</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the phase between horizontal and vertical is {0}° off 90°</source>
        <translation>die Phase zwischen waagerecht und senkrecht liegt {0}° neben 90°</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>measure the 1x phase horizontally and vertically at the same bearing</source>
        <translation>die 1x-Phase am selben Lager waagerecht und senkrecht messen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a force that turns makes a quarter of a turn between the two directions, give or take 30°</source>
        <translation>eine umlaufende Kraft ergibt eine Viertelumdrehung zwischen den zwei Richtungen, auf etwa 30°</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>motion along a line: resonance, misalignment or eccentricity first</source>
        <translation>Bewegung auf einer Linie: zuerst Resonanz, Ausrichtfehler oder Exzentrizität</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the two bearings move {0}° apart sideways</source>
        <translation>die zwei Lager bewegen sich seitlich um {0}° versetzt</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>measure the 1x phase at both bearings in the same direction</source>
        <translation>die 1x-Phase an beiden Lagern in derselben Richtung messen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>both bearings move together</source>
        <translation>beide Lager bewegen sich gemeinsam</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the bearings move neither together nor against each other</source>
        <translation>die Lager bewegen sich weder gemeinsam noch gegeneinander</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>suggests a couple on a rotor between bearings well below its rocking resonance; elsewhere the trial response decides</source>
        <translation>deutet bei einem Rotor zwischen den Lagern deutlich unter seiner Kippresonanz auf eine Momentenunwucht; sonst entscheidet die Antwort auf den Test</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>axial 1x is {0} of the largest radial 1x</source>
        <translation>1x axial ist das {0}-Fache des größten radialen 1x</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>measure 1x along the shaft at a bearing housing</source>
        <translation>1x an einem Lagergehäuse längs der Welle messen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a force across the shaft shakes little along it</source>
        <translation>eine Kraft quer zur Welle schüttelt längs wenig</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a bend or a coupling under strain pushes along the shaft</source>
        <translation>eine Verbiegung oder eine verspannte Kupplung drückt längs der Welle</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>an overhung rotor that shakes axially about as hard as vertically: bent shaft, misaligned drive, or its outer face</source>
        <translation>ein fliegend gelagerter Rotor, der axial etwa so stark schüttelt wie senkrecht: verbogene Welle, Ausrichtfehler am Antrieb, oder seine Außenseite</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the two bearings move {0}° apart along the shaft</source>
        <translation>die zwei Lager bewegen sich axial um {0}° versetzt</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>measure the 1x phase along the shaft at both bearings, sensors pointing the same way</source>
        <translation>die axiale 1x-Phase an beiden Lagern messen, Sensoren in dieselbe Richtung</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a bend tilts the bearings against each other</source>
        <translation>eine Verbiegung kippt die Lager gegeneinander</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>1x displacement grows with the speed to the power of {0}</source>
        <translation>der 1x-Weg wächst mit der Drehzahl hoch {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>record the coast-down or a run-up</source>
        <translation>Auslauf oder Hochlauf aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>what does not grow with the speed is no centrifugal force</source>
        <translation>was nicht mit der Drehzahl wächst, ist keine Fliehkraft</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a centrifugal force grows with the square of the speed</source>
        <translation>eine Fliehkraft wächst mit dem Quadrat der Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>it grows faster than any force does: a resonance is near</source>
        <translation>es wächst schneller als jede Kraft: eine Resonanz ist nah</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the nearest resonance is {0} % from running speed</source>
        <translation>die nächste Resonanz liegt {0} % neben der Betriebsdrehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>record the coast-down or a run-up, or make a bump test with the machine standing</source>
        <translation>Auslauf oder Hochlauf aufnehmen, oder einen Anschlagversuch an der stehenden Maschine machen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a resonance multiplies what little force there is</source>
        <translation>eine Resonanz vervielfacht auch eine kleine Kraft</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>below 20 % phase and amplitude follow every change of speed</source>
        <translation>unter 20 % folgen Phase und Amplitude jeder Drehzahländerung</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>far enough from running speed by the rule of thumb</source>
        <translation>nach der Faustregel weit genug von der Betriebsdrehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>far from running speed</source>
        <translation>weit weg von der Betriebsdrehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the 1x vector is {0}</source>
        <translation>der 1x-Zeiger ist {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>record a minute at a steady speed</source>
        <translation>eine Minute bei konstanter Drehzahl aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>nothing moves on the rotor, at least during this record</source>
        <translation>nichts bewegt sich auf dem Rotor, zumindest in dieser Aufnahme</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a slow turn over minutes: thermal bow or light rub</source>
        <translation>eine langsame Drehung über Minuten: thermische Durchbiegung oder leichtes Anstreifen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the phase turns fast with speed only near a resonance</source>
        <translation>die Phase dreht nur nahe einer Resonanz schnell mit der Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a second source close in frequency</source>
        <translation>eine zweite Quelle mit naher Frequenz</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a second source close in frequency, stronger than this machine's own 1x</source>
        <translation>eine zweite Quelle mit naher Frequenz, stärker als das eigene 1x dieser Maschine</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>something moves on or in the rotor, or the pulse does</source>
        <translation>etwas bewegt sich auf oder im Rotor, oder der Impuls tut es</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>something close in frequency that is not quite steady</source>
        <translation>etwas mit naher Frequenz, das nicht ganz stabil ist</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>{0} % of the pulses are missing or too many</source>
        <translation>{0} % der Impulse fehlen oder sind zu viel</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>look at the pulse: threshold, missing and extra pulses</source>
        <translation>den Impuls ansehen: Schwelle, fehlende und überzählige Impulse</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the pulses come as they should</source>
        <translation>die Impulse kommen, wie sie sollen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>pulses are lost or doubled</source>
        <translation>Impulse gehen verloren oder kommen doppelt</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the pulses scatter by {0}° about an even turn</source>
        <translation>die Impulse streuen um {0}° um eine gleichmäßige Drehung</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>look at the pulse: jitter, bracket, light</source>
        <translation>den Impuls ansehen: Zittern, Halter, Licht</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>mark, bracket or light are not steady</source>
        <translation>Marke, Halter oder Licht sind nicht ruhig</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the 1x vector changed by {0} % of itself from cold to warm</source>
        <translation>der 1x-Zeiger änderte sich von kalt auf warm um {0} % von sich</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>measure 1x cold and again at working temperature, at the same speed and load</source>
        <translation>1x kalt und noch einmal bei Betriebstemperatur messen, bei gleicher Drehzahl und Last</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>heat changes nothing</source>
        <translation>Wärme ändert nichts</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the rotor bends as it warms up</source>
        <translation>der Rotor verbiegt sich beim Warmwerden</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the rotor bends or the machine moves as it warms up</source>
        <translation>der Rotor verbiegt sich oder die Maschine bewegt sich beim Warmwerden</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the 1x vector changed by {0} % of itself after a stop and a restart</source>
        <translation>der 1x-Zeiger änderte sich nach Halt und Neustart um {0} % von sich</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>stop, start again, and repeat the initial run</source>
        <translation>anhalten, neu starten und den Urlauf wiederholen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>what sits on the rotor is where it was</source>
        <translation>was auf dem Rotor sitzt, ist, wo es war</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>something on the rotor or the support is not where it was</source>
        <translation>etwas am Rotor oder an der Abstützung ist nicht mehr, wo es war</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>with the machine stopped, {0} % of 1x are still there</source>
        <translation>bei stehender Maschine sind noch {0} % von 1x da</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>record with this machine stopped and its neighbours running</source>
        <translation>bei stehender Maschine und laufenden Nachbarn aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the neighbours shake this machine little</source>
        <translation>die Nachbarn schütteln diese Maschine wenig</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a neighbour runs close to this speed</source>
        <translation>ein Nachbar läuft mit naher Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a neighbour runs close to this speed: stop it, or keep it the same in all runs</source>
        <translation>ein Nachbar läuft mit naher Drehzahl: abstellen oder in allen Läufen gleich halten</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the neighbour alone shakes as much as this machine does running: stop it</source>
        <translation>der Nachbar allein schüttelt so viel wie diese Maschine im Lauf: abstellen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the trouble began {0}</source>
        <translation>die Störung begann {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>after work on the machine</source>
        <translation>nach Arbeiten an der Maschine</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>when the machine was new</source>
        <translation>als die Maschine neu war</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>ask those who run the machine</source>
        <translation>die fragen, die die Maschine fahren</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>build-up and wear grow with time</source>
        <translation>Belag und Verschleiß wachsen mit der Zeit</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>something broke off, moved or came loose</source>
        <translation>etwas brach ab, verschob sich oder wurde los</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>look first at what was touched last</source>
        <translation>zuerst ansehen, was zuletzt angefasst wurde</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>it was built so</source>
        <translation>sie wurde so gebaut</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the last work was on the {0}</source>
        <translation>die letzte Arbeit war an: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>coupling or drive</source>
        <translation>Kupplung oder Antrieb</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>foundation or feet</source>
        <translation>Fundament oder Füße</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>ask those who keep the machine</source>
        <translation>die fragen, die die Maschine instand halten</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the process brings the rotor {0}</source>
        <translation>der Prozess bringt auf den Rotor: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>liquid or dust inside</source>
        <translation>Flüssigkeit oder Staub im Innern</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>ask what the process does to the rotor</source>
        <translation>fragen, was der Prozess am Rotor bewirkt</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>uneven build-up is unbalance, and pieces of it break off</source>
        <translation>ungleicher Belag ist Unwucht, und Stücke davon brechen ab</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>uneven wear is unbalance</source>
        <translation>ungleicher Verschleiß ist Unwucht</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>uneven heat bends a shaft</source>
        <translation>ungleiche Wärme verbiegt eine Welle</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>what gets into hollow parts moves there</source>
        <translation>was in Hohlräume gerät, bewegt sich dort</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>clean and cold work leaves the rotor as it is</source>
        <translation>saubere und kalte Arbeit lässt den Rotor, wie er ist</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the rotor was found {0}</source>
        <translation>der Rotor war {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>dirty or damaged</source>
        <translation>schmutzig oder beschädigt</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>clean and whole</source>
        <translation>sauber und ganz</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>isolate, lock, try, block the rotor, and look at all of it</source>
        <translation>freischalten, sichern, Startversuch machen, Rotor blockieren und ihn ganz ansehen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>what sits or is missing on one side is unbalance: clean or repair first</source>
        <translation>was auf einer Seite sitzt oder fehlt, ist Unwucht: zuerst reinigen oder reparieren</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>there is nothing to break off</source>
        <translation>es gibt nichts, was abbrechen kann</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the impeller or hub {0}</source>
        <translation>das Laufrad oder die Nabe {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>moves on the shaft</source>
        <translation>bewegt sich auf der Welle</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>is tight</source>
        <translation>sitzt fest</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>isolate, lock, try, then check seat, key, set screws and bolts</source>
        <translation>freischalten, sichern, Startversuch machen, dann Sitz, Passfeder, Feststellschrauben und Schrauben prüfen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>it takes another place at every start</source>
        <translation>es nimmt bei jedem Start einen anderen Platz ein</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>it cannot move</source>
        <translation>es kann sich nicht bewegen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>liquid, dust or a loose piece inside was {0}</source>
        <translation>Flüssigkeit, Staub oder ein loses Stück im Innern: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>looked for and not found</source>
        <translation>gesucht und nicht gefunden</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>isolate, lock, try, then open drains and hollow parts</source>
        <translation>freischalten, sichern, Startversuch machen, dann Entwässerungen und Hohlräume öffnen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>it moves with every start</source>
        <translation>es bewegt sich mit jedem Start</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>there is nothing to move</source>
        <translation>es gibt nichts, was sich bewegt</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>loose bolts, play, cracks or broken grouting were {0}</source>
        <translation>lose Schrauben, Spiel, Risse oder gebrochener Verguss: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>isolate, lock, try, then check bolts, fits, housings, welds and grouting</source>
        <translation>freischalten, sichern, Startversuch machen, dann Schrauben, Sitze, Gehäuse, Schweißnähte und Verguss prüfen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>tighten or repair before balancing</source>
        <translation>vor dem Auswuchten anziehen oder reparieren</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>all holds as it should</source>
        <translation>alles hält, wie es soll</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the bearings are {0}</source>
        <translation>die Lager sind {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>noisy, hot or worn</source>
        <translation>laut, heiß oder verschlissen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>listen, feel the temperature, and check the play with the machine isolated</source>
        <translation>horchen, Temperatur fühlen und das Spiel bei freigeschalteter Maschine prüfen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>renew them before balancing</source>
        <translation>vor dem Auswuchten erneuern</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>hands and ears find only what is far gone</source>
        <translation>Hände und Ohren finden nur, was weit fortgeschritten ist</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>when one foot was loosened, the vibration {0}</source>
        <translation>als ein Fuß gelöst wurde: Schwingung {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>fell clearly</source>
        <translation>fiel deutlich</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>hardly changed</source>
        <translation>änderte sich kaum</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a competent person loosens and tightens one foot after the other while the rest holds; where this is not allowed, feeler gauge and dial gauge with the machine isolated</source>
        <translation>eine befähigte Person löst und zieht einen Fuß nach dem anderen an, während die übrigen halten; wo das nicht erlaubt ist, Fühlerlehre und Messuhr bei freigeschalteter Maschine</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the foot bent the frame</source>
        <translation>der Fuß verspannte den Rahmen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the feet bear evenly</source>
        <translation>die Füße tragen gleichmäßig</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the alignment is {0}</source>
        <translation>die Ausrichtung ist {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>outside its limits</source>
        <translation>außerhalb ihrer Grenzen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>within its limits</source>
        <translation>innerhalb ihrer Grenzen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>isolate, lock, try, then measure offset and angle at the coupling against the maker's limits</source>
        <translation>freischalten, sichern, Startversuch machen, dann Versatz und Winkel an der Kupplung messen, gegen die Grenzen des Herstellers</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>align before balancing</source>
        <translation>vor dem Auswuchten ausrichten</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>cold; pipe strain and heat may still move it</source>
        <translation>kalt; Rohrspannung und Wärme können sie noch verschieben</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the shaft runs out by {0} µm</source>
        <translation>die Welle hat {0} µm Rundlaufabweichung</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>isolate, lock, try, then turn the shaft by hand under a dial gauge</source>
        <translation>freischalten, sichern, Startversuch machen, dann die Welle von Hand unter einer Messuhr drehen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a straight shaft runs true; the maker's limit decides</source>
        <translation>eine gerade Welle läuft rund; die Grenze des Herstellers entscheidet</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a bent shaft does not run true; the maker's limit decides</source>
        <translation>eine verbogene Welle läuft nicht rund; die Grenze des Herstellers entscheidet</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the pulley runs out by {0} µm</source>
        <translation>die Riemenscheibe hat {0} µm Rundlaufabweichung</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>isolate, lock, try, take the belts off, and turn the pulley by hand under a dial gauge</source>
        <translation>freischalten, sichern, Startversuch machen, Riemen abnehmen und die Scheibe von Hand unter einer Messuhr drehen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the pulley runs true; the maker's limit decides</source>
        <translation>die Scheibe läuft rund; die Grenze des Herstellers entscheidet</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the belts pull unevenly; the maker's limit decides</source>
        <translation>die Riemen ziehen ungleich; die Grenze des Herstellers entscheidet</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the belts are {0}</source>
        <translation>die Riemen sind {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>worn, slack or unlike</source>
        <translation>verschlissen, schlaff oder ungleich</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>isolate, lock, try, then look at belts, tension and pulley alignment</source>
        <translation>freischalten, sichern, Startversuch machen, dann Riemen, Spannung und Flucht der Scheiben ansehen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>renew the set, set the tension</source>
        <translation>den Satz erneuern, die Spannung einstellen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>nothing to be seen</source>
        <translation>nichts zu sehen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>when load, damper or vane is changed, the vibration {0}</source>
        <translation>wenn Last, Klappe oder Leitschaufel geändert wird: Schwingung {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>hardly changes</source>
        <translation>ändert sich kaum</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>change load, damper or vane within what the process allows, and watch 1x and the overall level</source>
        <translation>Last, Klappe oder Leitschaufel ändern, so weit der Prozess es erlaubt, und 1x und Summenpegel beobachten</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>unbalance does not know the load</source>
        <translation>Unwucht kennt die Last nicht</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>when the power is cut, the vibration {0}</source>
        <translation>wenn der Strom abgeschaltet wird: Schwingung {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>drops at once</source>
        <translation>fällt sofort ab</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>falls with the speed</source>
        <translation>fällt mit der Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>record while the power is cut, and look whether it drops in a moment or with the speed</source>
        <translation>während des Abschaltens aufnehmen und sehen, ob sie sofort oder mit der Drehzahl fällt</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the field goes with the current</source>
        <translation>das Feld geht mit dem Strom</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the field goes with the current, this does not</source>
        <translation>das Feld geht mit dem Strom, dies nicht</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>traces or noise of rubbing were {0}</source>
        <translation>Spuren oder Geräusche von Anstreifen: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>listen while it coasts down; isolate, lock, try, and look at seals and clearances</source>
        <translation>beim Auslauf horchen; freischalten, sichern, Startversuch machen, Dichtungen und Spalte ansehen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>the rotor touches</source>
        <translation>der Rotor berührt</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>a light rub leaves little to see</source>
        <translation>leichtes Anstreifen hinterlässt wenig Sichtbares</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>one pulse in fifty is lost or doubled: a good mark and sensor lose none</source>
        <translation>von fünfzig Impulsen fehlt einer oder ist doppelt: gute Marke und guter Sensor verlieren keinen</translation>
    </message>
    <message>
        <location filename="../../../solver/diagnosis_rules.toml"/>
        <source>no rotor turns so unevenly from turn to turn: mark, bracket or light are not steady</source>
        <translation>kein Rotor dreht von Umdrehung zu Umdrehung so ungleichmäßig: Marke, Halter oder Licht sind nicht ruhig</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source>higher orders</source>
        <translation>höhere Ordnungen</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source>between the orders</source>
        <translation>zwischen den Ordnungen</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source>below 1x</source>
        <translation>unter 1x</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source>disturbed in a narrow band</source>
        <translation>in einem schmalen Band gestört</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source>following the speed</source>
        <translation>der Drehzahl folgend</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source>no point shows any 1x: the spectrum tells nothing; check the sensors and record again</source>
        <translation>kein Messpunkt zeigt 1x: das Spektrum sagt nichts; die Sensoren prüfen und neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source> at {0} Hz</source>
        <translation> bei {0} Hz</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source>{0}, {1} at {2} Hz</source>
        <translation>{0}, {1} bei {2} Hz</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source>{0} poles: a motor has an even number, 2 or more</source>
        <translation>{0} Pole: ein Motor hat eine gerade Zahl, 2 oder mehr</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source>second source at {0}{1}</source>
        <translation>zweite Quelle bei {0}{1}</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source>place "{0}": is no point; points are {1}</source>
        <translation>Platz „{0}“: ist kein Messpunkt; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source>near or above a resonance</source>
        <translation>nahe oder über einer Resonanz</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source>below its resonances</source>
        <translation>unter seinen Resonanzen</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source>running speed {0} r/min: must be above 0</source>
        <translation>Betriebsdrehzahl {0} r/min: muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source>"{0}": must be warm_change or repeat_change</source>
        <translation>„{0}“: muss warm_change oder repeat_change sein</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence.py"/>
        <source>background: no point has a 1x or a goal to hold its level against; measure 1x first</source>
        <translation>Hintergrund: kein Messpunkt hat 1x oder ein Ziel, um seinen Pegel zu vergleichen; zuerst 1x messen</translation>
    </message>
    <message>
        <location filename="../../../solver/evidence_warming.py"/>
        <source>{0}, {1} to {2} min after the start</source>
        <translation>{0}, {1} bis {2} min nach dem Start</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>{0}: check "{1}"</source>
        <translation>{0}: Prüfung „{1}“</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>variable-speed drive</source>
        <translation>Frequenzumrichter</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>fixed speed</source>
        <translation>feste Drehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>{0} points, but vectors and covariances are of shapes {1}: measure the same points</source>
        <translation>{0} Messpunkte, aber Zeiger und Kovarianzen sind von der Form {1}: dieselben Punkte messen</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>{0}: the first run shows no 1x at all; check the sensor and repeat it</source>
        <translation>{0}: der erste Lauf zeigt gar kein 1x; den Sensor prüfen und wiederholen</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>{0} s of vectors, {1} of them in the last five minutes: need {2} s and {3}; let the machine run on and keep measuring</source>
        <translation>{0} s Zeiger, davon {1} in den letzten fünf Minuten: nötig sind {2} s und {3}; die Maschine weiterlaufen lassen und weiter messen</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>1x is as small as its scatter: there is no phase to follow</source>
        <translation>1x ist so klein wie seine Streuung: es gibt keine Phase zu verfolgen</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>1x moved by {0} ± {1} % and {2} ± {3}° in five minutes</source>
        <translation>1x bewegte sich in fünf Minuten um {0} ± {1} % und {2} ± {3}°</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>{0}: let it run on</source>
        <translation>{0}: weiterlaufen lassen</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>{0}, where 2 % and 2° are the limits: too close to tell; keep measuring</source>
        <translation>{0}, wo 2 % und 2° die Grenzen sind: zu knapp für ein Urteil; weiter messen</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>speeds {0} and {1} r/min: must be above 0</source>
        <translation>Drehzahlen {0} und {1} r/min: müssen größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>speeds differ by {0} %, limit {1} %: not fitted together unless allowed</source>
        <translation>Drehzahlen weichen um {0} % ab, Grenze {1} %: nur mit Erlaubnis gemeinsam gerechnet</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>speeds differ by {0} %; up to {1} % is accepted without caution</source>
        <translation>Drehzahlen weichen um {0} % ab; bis {1} % wird ohne Vorbehalt angenommen</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>was not noted in both runs</source>
        <translation>wurde nicht in beiden Läufen notiert</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>was {0} and {1}</source>
        <translation>war {0} und {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>was {0} and {1}, tolerance {2}</source>
        <translation>war {0} und {1}, Toleranz {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>{0} % and {1}°</source>
        <translation>{0} % und {1}°</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>{0}: check "{1}": its key is used twice; each needs its own</source>
        <translation>{0}: Prüfung „{1}“: ihr Schlüssel kommt zweimal vor; jede braucht ihren eigenen</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>{0}: {1} = {2}: no fact or answer has such words</source>
        <translation>{0}: {1} = {2}: kein fact und keine Antwort hat solche Wörter</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>{0}: feeds "{1}", which the diagnosis does not know</source>
        <translation>{0}: liefert „{1}“, das die Diagnose nicht kennt</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>{0}: caution "{1}" has no text</source>
        <translation>{0}: Vorsichtsregel „{1}“ hat keinen Text</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>{0} times for {1} vectors: need as many, two or more, times rising</source>
        <translation>{0} Zeiten für {1} Zeiger: gleich viele nötig, zwei oder mehr, Zeiten steigend</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>1x moved by {0} in five minutes</source>
        <translation>1x bewegte sich in fünf Minuten um {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>{0} % {1} deg</source>
        <translation>{0} % {1} Grad</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>a resonance near running speed</source>
        <translation>eine Resonanz nahe der Betriebsdrehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>belt drive</source>
        <translation>Riemenantrieb</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>heat from the process</source>
        <translation>Wärme aus dem Prozess</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>vibration that follows the load</source>
        <translation>die Schwingung folgt der Last</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection.py"/>
        <source>neither belt nor heat nor a resonance nearby is known</source>
        <translation>weder Riemen noch Wärme noch eine nahe Resonanz ist bekannt</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>isolated, locked and tried by the local rules, and the rotor itself blocked: draught, backflow and off-centre mass turn it</source>
        <translation>nach örtlichen Vorschriften freigeschaltet, gesichert und durch einen Startversuch geprüft, und der Rotor selbst blockiert: Zug, Rückströmung und außermittige Masse drehen ihn</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>dampers and valves closed; permits for confined space and hot work where they are asked for</source>
        <translation>Klappen und Ventile zu; Erlaubnisse für enge Räume und Heißarbeiten, wo sie verlangt sind</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>tools, cables and tape counted in and out; the block out and everybody clear before the lock comes off</source>
        <translation>Werkzeug, Kabel und Band hinein und hinaus gezählt; Blockierung heraus und alle auf Abstand, bevor das Schloss abgeht</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>guards stay closed; nobody stands in the plane of rotation; loose clothes, hair and cables are kept away</source>
        <translation>Schutzeinrichtungen bleiben zu; niemand steht in der Drehebene; lose Kleidung, Haare und Kabel bleiben fern</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>for a licensed or competent person, by the local rules and the maker's instructions</source>
        <translation>für zugelassene oder befähigte Personen, nach örtlichen Vorschriften und Angaben des Herstellers</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Ask who runs and keeps it: what is wrong and since when, what was done last, what the process does to the rotor, which alarms came, what earlier reports say.</source>
        <translation>Fragen, wer sie fährt und instand hält: was fehlt ihr und seit wann, was wurde zuletzt gemacht, was bewirkt der Prozess am Rotor, welche Alarme kamen, was sagen frühere Berichte.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>no work, change or event that points to another cause than unbalance</source>
        <translation>keine Arbeit, Änderung oder Begebenheit, die auf eine andere Ursache als Unwucht deutet</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>rotor clean and whole</source>
        <translation>Rotor sauber und ganz</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Look at the whole rotor, every blade, weld and old balance mass; touch where the eye does not reach; clean it as a whole, never one side.</source>
        <translation>Den ganzen Rotor ansehen, jede Schaufel, Schweißnaht und alte Ausgleichsmasse; fühlen, wo das Auge nicht hinkommt; immer ganz reinigen, nie nur eine Seite.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>no build-up, wear, crack, missing piece or loose mass</source>
        <translation>kein Belag, Verschleiß, Riss, fehlendes Stück oder lose Masse</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>seat of impeller, hub and pulley</source>
        <translation>Sitz von Laufrad, Nabe und Riemenscheibe</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Check key, set screws, taper and bolts of everything on the shaft; push and turn it by hand; look for rust dust and shine at the seat.</source>
        <translation>Passfeder, Feststellschrauben, Konus und Schrauben von allem auf der Welle prüfen; von Hand drücken und drehen; am Sitz nach Passungsrost und blanken Stellen sehen.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>nothing moves on the shaft</source>
        <translation>nichts bewegt sich auf der Welle</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>hollow parts empty</source>
        <translation>Hohlräume leer</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Open drains and inspection plugs of hollow blades, drums and covers; listen for loose pieces while the rotor is turned by hand.</source>
        <translation>Entwässerungen und Kontrollstopfen hohler Schaufeln, Trommeln und Deckel öffnen; nach losen Stücken horchen, während der Rotor von Hand gedreht wird.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>no liquid, dust or loose piece inside</source>
        <translation>keine Flüssigkeit, kein Staub oder loses Stück im Innern</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Listen, read the temperature, look at grease or oil; lift the shaft with a bar under a dial gauge and read the play.</source>
        <translation>Horchen, Temperatur ablesen, Fett oder Öl ansehen; die Welle mit einer Stange unter der Messuhr anheben und das Spiel ablesen.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>quiet, no hotter than usual, play within the maker's limit</source>
        <translation>ruhig, nicht heißer als üblich, Spiel innerhalb der Grenze des Herstellers</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>bolts, housings, frame and foundation</source>
        <translation>Schrauben, Gehäuse, Rahmen und Fundament</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Try bolts with a torque wrench; look for cracks, gaps, broken grout and rust water; with the machine running, compare both sides of each joint with the sensor.</source>
        <translation>Schrauben mit dem Drehmomentschlüssel prüfen; nach Rissen, Spalten, gebrochenem Verguss und Rostwasser sehen; bei laufender Maschine mit dem Sensor beide Seiten jeder Fuge vergleichen.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>tight and whole; no step in vibration across a joint</source>
        <translation>fest und ganz; kein Sprung der Schwingung über eine Fuge</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Feeler gauge under each foot; then loosen and tighten one foot after the other under a dial gauge.</source>
        <translation>Fühlerlehre unter jeden Fuß; dann einen Fuß nach dem anderen unter der Messuhr lösen und anziehen.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>no foot rises by more than 0.05 mm, or by what the maker allows</source>
        <translation>kein Fuß hebt sich um mehr als 0.05 mm, oder als der Hersteller erlaubt</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>alignment of drive and rotor</source>
        <translation>Ausrichtung von Antrieb und Rotor</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Measure offset and angle at the coupling; look at coupling wear, pipe and duct strain, and what heat will move.</source>
        <translation>Versatz und Winkel an der Kupplung messen; Kupplungsverschleiß, Rohr- und Kanalspannungen ansehen, und was Wärme verschieben wird.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>within the limits of the coupling's maker, cold and as expected warm</source>
        <translation>innerhalb der Grenzen des Kupplungsherstellers, kalt und erwartet warm</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>belts and pulleys</source>
        <translation>Riemen und Scheiben</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Look at wear, tension and matching of the set; measure run-out and alignment of both pulleys; enter diameters and belt length, so that belt frequencies are named.</source>
        <translation>Verschleiß, Spannung und Gleichheit des Satzes ansehen; Rundlaufabweichung und Flucht beider Scheiben messen; Durchmesser und Riemenlänge eingeben, damit Riemenfrequenzen benannt werden.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>a matched set, tension as the maker says, pulleys true and in line; belt frequencies small beside 1x</source>
        <translation>ein gleicher Satz, Spannung nach Herstellerangabe, Scheiben rund und fluchtend; Riemenfrequenzen klein neben 1x</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>shaft straight</source>
        <translation>Welle gerade</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Turn the shaft by hand under a dial gauge at seal, seat and coupling; where it sagged while standing or hot, turn it for some minutes first.</source>
        <translation>Die Welle von Hand unter der Messuhr drehen, an Dichtung, Sitz und Kupplung; wo sie im Stehen oder heiß durchhing, vorher einige Minuten drehen.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>run-out within the maker's limit; without one, below about 0.02 mm</source>
        <translation>Rundlaufabweichung innerhalb der Grenze des Herstellers; ohne eine unter etwa 0.02 mm</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Listen during coast-down; look for traces on seals, inlet cone and casing; measure the gaps all round.</source>
        <translation>Beim Auslauf horchen; nach Spuren an Dichtungen, Einlaufdüse und Gehäuse sehen; die Spalte ringsum messen.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>no traces, gaps even</source>
        <translation>keine Spuren, Spalte gleichmäßig</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>axial vibration</source>
        <translation>axiale Schwingung</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Measure 1x along the shaft at each bearing, sensors pointing the same way. An overhung rotor that shakes axially about as hard as vertically is looked at for a bent shaft, misalignment and its outer face.</source>
        <translation>1x längs der Welle an jedem Lager messen, Sensoren in dieselbe Richtung. Schüttelt ein fliegend gelagerter Rotor axial etwa so stark wie senkrecht, wird er auf verbogene Welle, Ausrichtfehler und seine Außenseite angesehen.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>axial 1x well below radial 1x</source>
        <translation>1x axial deutlich unter 1x radial</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Look at the pulse as it is seen: threshold, jitter, missing and extra pulses, light, bracket, a second bright spot. Rule it out first where the phase moves.</source>
        <translation>Den Impuls ansehen, wie er ankommt: Schwelle, Zittern, fehlende und überzählige Impulse, Licht, Halter, ein zweiter heller Fleck. Zuerst ausschließen, wo die Phase sich bewegt.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>no missing or extra pulses, scatter below half a degree</source>
        <translation>keine fehlenden oder überzähligen Impulse, Streuung unter einem halben Grad</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>spectrum: is it 1x at all</source>
        <translation>Spektrum: ist es überhaupt 1x</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Record half a minute at steady speed; look at the share of 1x, at multiples and fractions of the speed, and at what follows no order.</source>
        <translation>Eine halbe Minute bei konstanter Drehzahl aufnehmen; den Anteil von 1x ansehen, Vielfache und Bruchteile der Drehzahl, und was keiner Ordnung folgt.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>1x holds most of the vibration</source>
        <translation>1x enthält den größten Teil der Schwingung</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>directions and bearings against each other</source>
        <translation>Richtungen und Lager gegeneinander</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Measure 1x horizontally and vertically at each bearing, with the angles of the sensors in the hook-up.</source>
        <translation>1x an jedem Lager waagerecht und senkrecht messen, mit den Winkeln der Sensoren im Anschluss.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>horizontal one to three times vertical, a quarter of a turn between them, give or take 30°</source>
        <translation>waagerecht ein- bis dreimal senkrecht, eine Viertelumdrehung dazwischen, auf etwa 30°</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>signal steady</source>
        <translation>Signal stabil</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Record a minute; the verdict on 1x says steady, or what moves it.</source>
        <translation>Eine Minute aufnehmen; das Urteil über 1x sagt stabil, oder was es bewegt.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>initial run repeatable</source>
        <translation>Urlauf wiederholbar</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Stop, restart, wait as long as before, and repeat the initial run; the two vectors are compared with their covariance.</source>
        <translation>Anhalten, neu starten, so lange warten wie zuvor und den Urlauf wiederholen; die zwei Zeiger werden mit ihrer Kovarianz verglichen.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>the vectors agree within their scatter and the repeatability assumed</source>
        <translation>die Zeiger stimmen innerhalb ihrer Streuung und der angenommenen Wiederholbarkeit überein</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>load and speed steady</source>
        <translation>Last und Drehzahl konstant</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Note load, damper or vane, motor current, temperatures; change the load within what the process allows and watch 1x.</source>
        <translation>Last, Klappe oder Leitschaufel, Motorstrom, Temperaturen notieren; die Last ändern, so weit der Prozess es erlaubt, und 1x beobachten.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>speed within 0.5 % for 10 s, load steady, 1x hardly follows the load</source>
        <translation>Drehzahl 10 s lang innerhalb 0.5 %, Last konstant, 1x folgt der Last kaum</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>speed held by hand</source>
        <translation>Drehzahl von Hand gehalten</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Fix the setpoint of the variable-speed drive by hand, its control off; choose a speed away from resonances and neighbours.</source>
        <translation>Den Sollwert des Frequenzumrichters von Hand festlegen, Regelung aus; eine Drehzahl abseits von Resonanzen und Nachbarn wählen.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>speed within 0.5 % from run to run</source>
        <translation>Drehzahl von Lauf zu Lauf innerhalb 0.5 %</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>cold against warm</source>
        <translation>kalt gegen warm</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Follow 1x from a cold start until it moves less than 2 % and 2° in 5 minutes; note the minutes since the start.</source>
        <translation>1x vom Kaltstart an verfolgen, bis es sich in 5 Minuten weniger als 2 % und 2° bewegt; die Minuten seit dem Start notieren.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>the vector settles, and cold and warm differ little</source>
        <translation>der Zeiger läuft ein, und kalt und warm unterscheiden sich wenig</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Record the coast-down or a run-up, or hit the standing machine: three clear blows with a soft, heavy hammer at each bearing, each rung out, one direction after the other.</source>
        <translation>Auslauf oder Hochlauf aufnehmen, oder die stehende Maschine anschlagen: drei klare Schläge mit weichem, schwerem Hammer an jedem Lager, jeden ausklingen lassen, eine Richtung nach der anderen.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>no resonance within 20 % of running speed</source>
        <translation>keine Resonanz innerhalb 20 % der Betriebsdrehzahl</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Record with this machine stopped and its neighbours running as usual; the level about running speed is held against 1x or the goal.</source>
        <translation>Bei stehender Maschine und üblich laufenden Nachbarn aufnehmen; der Pegel um die Betriebsdrehzahl wird mit 1x oder dem Ziel verglichen.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>below 10 % of 1x; above 30 %: stop them, or keep them the same in all runs</source>
        <translation>unter 10 % von 1x; über 30 %: abstellen oder in allen Läufen gleich halten</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>electrical forces</source>
        <translation>elektrische Kräfte</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Look for twice line frequency and for sidebands of the pole-pass frequency; record while the power is cut.</source>
        <translation>Nach doppelter Netzfrequenz und Seitenbändern der Polschlupffrequenz sehen; während des Abschaltens aufnehmen.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>little at twice line frequency; the vibration falls with the speed, not at once</source>
        <translation>wenig bei doppelter Netzfrequenz; die Schwingung fällt mit der Drehzahl, nicht sofort</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>draught and backflow</source>
        <translation>Zug und Rückströmung</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>Close dampers and valves and watch whether the wheel turns by itself; only a mechanical block holds it.</source>
        <translation>Klappen und Ventile schließen und sehen, ob das Rad von selbst dreht; nur eine mechanische Blockierung hält es.</translation>
    </message>
    <message>
        <location filename="../../../solver/inspection_checks.toml"/>
        <source>the wheel can be blocked safely by the means at hand</source>
        <translation>das Rad lässt sich mit den vorhandenen Mitteln sicher blockieren</translation>
    </message>
</context>
</TS>
