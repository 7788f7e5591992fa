<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>stillshaft</name>
    <message>
        <location filename="../../../acquire/simulated.py"/>
        <source>drive side</source>
        <translation>Antriebsseite</translation>
    </message>
    <message>
        <location filename="../../../acquire/simulated.py"/>
        <source>far side</source>
        <translation>Gegenseite</translation>
    </message>
    <message>
        <location filename="../../../dsp/channels.py"/>
        <source>flat magnet</source>
        <translation>Flachmagnet</translation>
    </message>
    <message>
        <location filename="../../../dsp/channels.py"/>
        <source>two-pole magnet</source>
        <translation>Zweipolmagnet</translation>
    </message>
    <message>
        <location filename="../../../dsp/channels.py"/>
        <source>hand probe</source>
        <translation>Handtaster</translation>
    </message>
</context>
</TS>
