// The step from version 1 of the book to version 2, for migrations.cpp alone: glaze cards, photos, what is
// measured and graded after a firing, alarms as a log of events, and an index of all words.
#pragma once

namespace ringhold {

inline constexpr const char* schemaVersion2 = R"sql(
ALTER TABLE kiln ADD COLUMN gas_price REAL CONSTRAINT "a price is not below 0"
    CHECK (gas_price >= 0 AND gas_price < 1e12);

ALTER TABLE pack ADD COLUMN shelf TEXT NOT NULL DEFAULT '';
ALTER TABLE pack ADD COLUMN spot_x REAL CONSTRAINT "a spot lies on its shelf" CHECK (spot_x BETWEEN 0 AND 1);
ALTER TABLE pack ADD COLUMN spot_y REAL CONSTRAINT "a spot lies on its shelf" CHECK (spot_y BETWEEN 0 AND 1);

ALTER TABLE piece ADD COLUMN form TEXT NOT NULL DEFAULT '';
ALTER TABLE piece ADD COLUMN clay TEXT NOT NULL DEFAULT '';
ALTER TABLE piece ADD COLUMN application_g_per_cm2 REAL CONSTRAINT "an application is above 0 and below 10 g/cm2"
    CHECK (application_g_per_cm2 > 0 AND application_g_per_cm2 < 10);
ALTER TABLE piece ADD COLUMN spot_x REAL CONSTRAINT "a spot lies on its shelf" CHECK (spot_x BETWEEN 0 AND 1);
ALTER TABLE piece ADD COLUMN spot_y REAL CONSTRAINT "a spot lies on its shelf" CHECK (spot_y BETWEEN 0 AND 1);

ALTER TABLE outcome ADD COLUMN typical_mm REAL CONSTRAINT "a crystal's size is 0 to 10 m"
    CHECK (typical_mm BETWEEN 0 AND 10000);
ALTER TABLE outcome ADD COLUMN crystal_colour TEXT NOT NULL DEFAULT '';
ALTER TABLE outcome ADD COLUMN crystal_picked TEXT NOT NULL DEFAULT '' CONSTRAINT "a picked colour is #rrggbb"
    CHECK (crystal_picked = '' OR crystal_picked GLOB
        '#[0-9a-f][0-9a-f][0-9a-f][0-9a-f][0-9a-f][0-9a-f]');
ALTER TABLE outcome ADD COLUMN ground_colour TEXT NOT NULL DEFAULT '';
ALTER TABLE outcome ADD COLUMN ground_picked TEXT NOT NULL DEFAULT '' CONSTRAINT "a picked colour is #rrggbb"
    CHECK (ground_picked = '' OR ground_picked GLOB '#[0-9a-f][0-9a-f][0-9a-f][0-9a-f][0-9a-f][0-9a-f]');
ALTER TABLE outcome ADD COLUMN run_off TEXT NOT NULL DEFAULT '';
ALTER TABLE outcome ADD COLUMN run_off_mm REAL CONSTRAINT "a glaze runs 0 to 10 m"
    CHECK (run_off_mm BETWEEN 0 AND 10000);
ALTER TABLE outcome ADD COLUMN catcher_clean INTEGER CHECK (catcher_clean IN (0, 1));

CREATE TABLE outcome_fault (
    piece INTEGER NOT NULL REFERENCES outcome ON DELETE CASCADE,
    fault TEXT NOT NULL CONSTRAINT "a known fault has one of the known words" CHECK (fault IN
        ('crawled', 'pinholes', 'no crystals', 'too many seeds', 'dunting', 'stuck', 'dull')),
    PRIMARY KEY (piece, fault)
) STRICT, WITHOUT ROWID;

-- A card names no piece and a piece no card: they know each other by the name that the piece's glaze is given.
CREATE TABLE glaze_card (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE CONSTRAINT "a glaze card has a name" CHECK (trim(name) <> ''),
    cone TEXT NOT NULL,
    top_C REAL CONSTRAINT "a temperature is within 5000 degrees" CHECK (abs(top_C) <= 5000),
    running TEXT NOT NULL,
    grow_low_C REAL CONSTRAINT "a temperature is within 5000 degrees" CHECK (abs(grow_low_C) <= 5000),
    grow_high_C REAL CONSTRAINT "a temperature is within 5000 degrees" CHECK (abs(grow_high_C) <= 5000),
    colour_temperatures TEXT NOT NULL,
    application TEXT NOT NULL,
    notes TEXT NOT NULL,
    CONSTRAINT "crystals grow from the lower temperature to the higher" CHECK (grow_high_C >= grow_low_C)
) STRICT;
CREATE TABLE glaze_habit (
    card INTEGER NOT NULL REFERENCES glaze_card ON DELETE CASCADE,
    position INTEGER NOT NULL CHECK (position >= 0),
    low_C REAL NOT NULL CONSTRAINT "a temperature is within 5000 degrees" CHECK (abs(low_C) <= 5000),
    high_C REAL NOT NULL CONSTRAINT "a temperature is within 5000 degrees" CHECK (abs(high_C) <= 5000),
    word TEXT NOT NULL,
    PRIMARY KEY (card, position),
    CONSTRAINT "a habit goes from the lower temperature to the higher" CHECK (high_C >= low_C)
) STRICT, WITHOUT ROWID;
CREATE TABLE recipe_line (
    card INTEGER NOT NULL REFERENCES glaze_card ON DELETE CASCADE,
    position INTEGER NOT NULL CHECK (position >= 0),
    material TEXT NOT NULL,
    percent REAL NOT NULL CONSTRAINT "a recipe's percent is not below 0" CHECK (percent >= 0 AND percent < 1e9),
    addition INTEGER NOT NULL CHECK (addition IN (0, 1)),
    batch_g REAL CONSTRAINT "a batch's weight is not below 0" CHECK (batch_g >= 0 AND batch_g < 1e9),
    formula TEXT NOT NULL,
    analysis TEXT NOT NULL, -- [["SiO2", 60.5], ...] or nothing
    PRIMARY KEY (card, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE photo (
    id INTEGER PRIMARY KEY,
    piece INTEGER NOT NULL REFERENCES piece,
    taken_ms INTEGER,
    width INTEGER NOT NULL CONSTRAINT "a photo has a size" CHECK (width > 0),
    height INTEGER NOT NULL CONSTRAINT "a photo has a size" CHECK (height > 0),
    caption TEXT NOT NULL,
    jpeg BLOB NOT NULL CONSTRAINT "a photo has up to 4 MB" CHECK (length(jpeg) BETWEEN 1 AND 4000000)
) STRICT;
CREATE INDEX photo_of_piece ON photo (piece);
CREATE TABLE photo_measure (
    id INTEGER PRIMARY KEY,
    photo INTEGER NOT NULL REFERENCES photo ON DELETE CASCADE,
    what TEXT NOT NULL,
    known_mm REAL NOT NULL CONSTRAINT "a known length is above 0" CHECK (known_mm > 0 AND known_mm <= 10000),
    measured_mm REAL NOT NULL CONSTRAINT "a measured length is 0 to 10 m" CHECK (measured_mm BETWEEN 0 AND 10000),
    error_mm REAL NOT NULL CONSTRAINT "an error is 0 to 10 m" CHECK (error_mm BETWEEN 0 AND 10000),
    ends TEXT NOT NULL -- [[x, y], ...] four times, or nothing
) STRICT;
CREATE INDEX measure_of_photo ON photo_measure (photo);

CREATE TABLE ring_radius (
    piece INTEGER NOT NULL REFERENCES piece,
    ring INTEGER NOT NULL CONSTRAINT "rings are counted from 0" CHECK (ring >= 0),
    radius_mm REAL NOT NULL CONSTRAINT "a radius is 0 to 10 m" CHECK (radius_mm BETWEEN 0 AND 10000),
    sd_mm REAL NOT NULL CONSTRAINT "a standard deviation is 0 to 10 m" CHECK (sd_mm BETWEEN 0 AND 10000),
    PRIMARY KEY (piece, ring)
) STRICT, WITHOUT ROWID;
CREATE TABLE sag_seen (
    piece INTEGER NOT NULL REFERENCES piece,
    at_ms INTEGER NOT NULL,
    seen TEXT NOT NULL CONSTRAINT "a sag is seen, not seen or unsure" CHECK (seen IN ('yes', 'no', 'unsure')),
    radius_mm REAL CONSTRAINT "a radius is 0 to 10 m" CHECK (radius_mm BETWEEN 0 AND 10000),
    PRIMARY KEY (piece, at_ms)
) STRICT, WITHOUT ROWID;

CREATE TABLE service (
    id INTEGER PRIMARY KEY,
    kiln INTEGER NOT NULL REFERENCES kiln,
    probe INTEGER REFERENCES probe,
    at_ms INTEGER NOT NULL,
    kind TEXT NOT NULL CONSTRAINT "service is done to elements, probe, relay or other"
        CHECK (kind IN ('elements', 'probe', 'relay', 'other')),
    words TEXT NOT NULL
) STRICT;
CREATE INDEX service_of_kiln ON service (kiln, at_ms);
CREATE INDEX service_of_probe ON service (probe);
CREATE TABLE meter_stand (
    id INTEGER PRIMARY KEY,
    firing INTEGER NOT NULL REFERENCES firing,
    at_ms INTEGER NOT NULL,
    stand REAL NOT NULL CONSTRAINT "a meter stands at 0 or above" CHECK (stand >= 0 AND stand < 1e15),
    unit TEXT NOT NULL CONSTRAINT "a meter counts kWh or m3" CHECK (unit IN ('kWh', 'm3')),
    struck INTEGER NOT NULL CHECK (struck IN (0, 1))
) STRICT;
CREATE INDEX meter_stand_of_firing ON meter_stand (firing, at_ms);
CREATE TRIGGER meter_stand_kept BEFORE UPDATE OF firing, at_ms, stand, unit ON meter_stand BEGIN
    SELECT raise(ABORT, 'a meter stand is struck, never altered');
END;
CREATE TABLE checklist_item (
    id INTEGER PRIMARY KEY,
    position INTEGER NOT NULL CHECK (position >= 0),
    words TEXT NOT NULL CONSTRAINT "a line of the checklist has words" CHECK (trim(words) <> ''),
    kind TEXT NOT NULL CHECK (kind IN ('caution', 'own'))
) STRICT;

CREATE TABLE step_correction (
    id INTEGER PRIMARY KEY,
    firing INTEGER NOT NULL REFERENCES firing,
    at_ms INTEGER NOT NULL,
    step INTEGER NOT NULL CONSTRAINT "steps are counted from 0" CHECK (step >= 0),
    struck INTEGER NOT NULL CHECK (struck IN (0, 1))
) STRICT;
CREATE INDEX step_correction_of_firing ON step_correction (firing, at_ms);
CREATE TRIGGER step_correction_kept BEFORE UPDATE OF firing, at_ms, step ON step_correction BEGIN
    SELECT raise(ABORT, 'a step correction is struck, never altered');
END;

-- An alarm's life is the train of its events. The alarms of version 1 become such trains.
CREATE TABLE alarm_event (
    id INTEGER PRIMARY KEY,
    firing INTEGER NOT NULL REFERENCES firing,
    at_ms INTEGER NOT NULL,
    cause TEXT NOT NULL CONSTRAINT "an alarm has a cause" CHECK (cause <> ''),
    change TEXT NOT NULL CONSTRAINT "an alarm is raised, worsened, acknowledged or ended"
        CHECK (change IN ('raised', 'worsened', 'acknowledged', 'ended')),
    level TEXT NOT NULL CONSTRAINT "an alarm is a notice, a warning or urgent"
        CHECK (level IN ('notice', 'warning', 'urgent')),
    words TEXT NOT NULL,
    who TEXT NOT NULL
) STRICT;
CREATE INDEX alarm_event_of_firing ON alarm_event (firing, at_ms);
INSERT INTO alarm_event (firing, at_ms, cause, change, level, words, who)
    SELECT firing, at_ms, cause, change, CASE WHEN level IN ('notice', 'warning', 'urgent') THEN level
        ELSE 'warning' END, words, who FROM (
        SELECT id, firing, first_ms AS at_ms, cause, 'raised' AS change, 1 AS turn, level, detail AS words, '' AS who
            FROM alarm
        UNION ALL SELECT id, firing, acknowledged_ms, cause, 'acknowledged', 2, level, '', acknowledged_by
            FROM alarm WHERE acknowledged_ms IS NOT NULL
        UNION ALL SELECT id, firing, ended_ms, cause, 'ended', 3, level, '', '' FROM alarm WHERE ended_ms IS NOT NULL)
    ORDER BY at_ms, id, turn;
DROP TABLE alarm;
CREATE TRIGGER alarm_event_kept BEFORE UPDATE ON alarm_event BEGIN
    SELECT raise(ABORT, 'what happened to an alarm is never altered');
END;
CREATE TRIGGER alarm_event_stays BEFORE DELETE ON alarm_event BEGIN
    SELECT raise(ABORT, 'what happened to an alarm is never erased');
END;

-- The last reading of each channel, struck or not, so that a list of firings touches no reading.
ALTER TABLE channel ADD COLUMN last_ms INTEGER;
UPDATE channel SET last_ms = (SELECT max(at_ms) FROM reading WHERE channel = channel.id);
DROP TRIGGER reading_counted;
CREATE TRIGGER reading_counted AFTER INSERT ON reading BEGIN
    UPDATE channel SET
        peak = CASE WHEN new.struck THEN peak WHEN readings = 0 THEN new.value WHEN peak < new.value THEN new.value
            ELSE peak END,
        readings = readings + NOT new.struck,
        last_ms = max(ifnull(last_ms, new.at_ms), new.at_ms)
        WHERE id = new.channel;
END;

-- All words of a firing, to be searched: title, notes that are not struck, ware and outcomes. The writer keeps
-- words the same as firing_words; a trigger may not, since a schema is not trusted with virtual tables.
CREATE VIEW firing_words AS SELECT firing.id AS firing, title
    || ifnull(char(10) || (SELECT group_concat(text, char(10)) FROM
        (SELECT text FROM note WHERE note.firing = firing.id AND NOT struck ORDER BY id)), '')
    || ifnull(char(10) || (SELECT group_concat(text, char(10)) FROM
        (SELECT name || ' ' || glaze || ' ' || form || ' ' || clay AS text FROM piece
            WHERE piece.firing = firing.id ORDER BY id)), '')
    || ifnull(char(10) || (SELECT group_concat(text, char(10)) FROM
        (SELECT faults || ' ' || note || ' ' || crystal_colour || ' ' || ground_colour || ' ' || run_off AS text
            FROM outcome JOIN piece ON piece.id = outcome.piece WHERE piece.firing = firing.id ORDER BY piece.id)), '')
    || ifnull(char(10) || (SELECT group_concat(text, char(10)) FROM
        (SELECT fault AS text FROM outcome_fault JOIN piece ON piece.id = outcome_fault.piece
            WHERE piece.firing = firing.id ORDER BY piece.id, fault)), '')
    || ifnull(char(10) || (SELECT group_concat(text, char(10)) FROM
        (SELECT caption AS text FROM photo JOIN piece ON piece.id = photo.piece
            WHERE piece.firing = firing.id ORDER BY photo.id)), '') AS text
    FROM firing;
CREATE VIRTUAL TABLE words USING fts5 (text, tokenize = 'unicode61 remove_diacritics 2'); -- by the firing's id
INSERT INTO words (rowid, text) SELECT firing, text FROM firing_words;
)sql";

} // namespace ringhold
