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
        <location filename="../../../ui/desktop/brief_page.py"/>
        <source>Brief</source>
        <translation>Aufgabe</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/brief_start.py"/>
        <source>Job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/closeout_page.py"/>
        <source>Close-out</source>
        <translation>Abschluss</translation>
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
        <source>Connect the sensors, or let the simulated rotor run.</source>
        <translation>Sensoren anschließen oder den simulierten Rotor laufen lassen.</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_form.py"/>
        <source>Vibration in</source>
        <translation>Schwingung in</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_page.py"/>
        <source>Stop</source>
        <translation>Stopp</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/hookup_watch.py"/>
        <source>Attention</source>
        <translation>Achtung</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_answers.py"/>
        <source>needs attention</source>
        <translation>beachten</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/inspect_page.py"/>
        <source>Inspect</source>
        <translation>Prüfen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_hand.py"/>
        <source>with rotation</source>
        <translation>mit Drehsinn</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_model.py"/>
        <source>as hooked up</source>
        <translation>wie erfasst</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/masses_page.py"/>
        <source>Masses</source>
        <translation>Massen</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/rail.py"/>
        <source>Stages of the job</source>
        <translation>Schritte des Auftrags</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/runs_page.py"/>
        <source>Runs</source>
        <translation>Läufe</translation>
    </message>
    <message>
        <location filename="../../../ui/desktop/settings.py"/>
        <source>other end</source>
        <translation>Gegenseite</translation>
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
</context>
</TS>
