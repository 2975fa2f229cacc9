#include "core/book/schema.h"
#include "core/book/schema_v2.h"

#include <array>

namespace ringhold {

namespace {

// Version 1. Times are milliseconds since 1970 in UTC, temperatures °C; flags are 0 or 1. The constraints'
// names are what people read when a line is refused.
constexpr const char* version1 = R"sql(
CREATE TABLE preference (
    name TEXT NOT NULL PRIMARY KEY CONSTRAINT "a preference has a name" CHECK (name <> ''),
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO preference VALUES ('book_id', lower(hex(randomblob(16))));

CREATE TABLE kiln (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE CONSTRAINT "a kiln has a name" CHECK (trim(name) <> ''),
    fuel TEXT NOT NULL CONSTRAINT "a kiln burns electric, gas or wood" CHECK (fuel IN ('electric', 'gas', 'wood')),
    volume_L REAL CONSTRAINT "a volume is above 0" CHECK (volume_L > 0 AND volume_L < 1e9),
    rated_W REAL CONSTRAINT "a rated power is above 0" CHECK (rated_W > 0 AND rated_W < 1e9),
    rated_V REAL CONSTRAINT "a rated voltage is above 0" CHECK (rated_V > 0 AND rated_V < 1e6),
    price_per_kWh REAL CONSTRAINT "a price is not below 0" CHECK (price_per_kWh >= 0 AND price_per_kWh < 1e12),
    note TEXT NOT NULL
) STRICT;

CREATE TABLE probe (
    id INTEGER PRIMARY KEY,
    kiln INTEGER NOT NULL REFERENCES kiln,
    label TEXT NOT NULL,
    type TEXT NOT NULL CONSTRAINT "a thermocouple type is one of B E J K N R S T"
        CHECK (type IN ('B', 'E', 'J', 'K', 'N', 'R', 'S', 'T')),
    position TEXT NOT NULL,
    fitted_ms INTEGER,
    retired_ms INTEGER,
    CONSTRAINT "a probe is not retired before it is fitted" CHECK (retired_ms >= fitted_ms)
) STRICT;
CREATE INDEX probe_of_kiln ON probe (kiln);

CREATE TABLE firing (
    id INTEGER PRIMARY KEY,
    kiln INTEGER NOT NULL REFERENCES kiln,
    title TEXT NOT NULL,
    began_ms INTEGER NOT NULL,
    ended_ms INTEGER,
    plan TEXT CHECK (plan <> ''), -- as a plan file
    model TEXT NOT NULL, -- JSON or nothing
    CONSTRAINT "a firing does not end before it begins" CHECK (ended_ms >= began_ms)
) STRICT;
CREATE INDEX firing_of_kiln ON firing (kiln, began_ms);
CREATE INDEX firing_in_time ON firing (began_ms);
CREATE UNIQUE INDEX firing_open ON firing (kiln) WHERE ended_ms IS NULL;

-- readings and peak sum up the readings that are not struck; triggers keep them. A peak that is NULL while there
-- are readings has to be looked for: the line that made it was struck.
CREATE TABLE channel (
    id INTEGER PRIMARY KEY,
    firing INTEGER NOT NULL REFERENCES firing,
    quantity TEXT NOT NULL CONSTRAINT "a channel measures a known quantity"
        CHECK (quantity IN ('temperature', 'line volts', 'line amps', 'oxygen millivolts', 'duty')),
    label TEXT NOT NULL,
    probe INTEGER REFERENCES probe,
    readings INTEGER NOT NULL DEFAULT 0 CHECK (readings >= 0),
    peak REAL,
    CONSTRAINT "only a temperature comes from a probe" CHECK (probe IS NULL OR quantity = 'temperature')
) STRICT;
CREATE UNIQUE INDEX channel_identity ON channel (firing, quantity, label, ifnull(probe, 0));
CREATE INDEX channel_of_probe ON channel (probe);

-- Clustered, so that one channel's curve is one run of pages. seq tells lines of the same instant apart: a
-- corrected reading is a struck line and a line with the next seq.
CREATE TABLE reading (
    channel INTEGER NOT NULL REFERENCES channel,
    at_ms INTEGER NOT NULL,
    seq INTEGER NOT NULL CHECK (seq >= 0),
    value REAL NOT NULL CONSTRAINT "a reading is a finite number" CHECK (abs(value) <= 1.7976931348623157e308),
    by_hand INTEGER NOT NULL CHECK (by_hand IN (0, 1)),
    struck INTEGER NOT NULL CHECK (struck IN (0, 1)),
    PRIMARY KEY (channel, at_ms, seq)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER reading_counted AFTER INSERT ON reading WHEN NOT new.struck BEGIN
    UPDATE channel SET
        peak = CASE WHEN readings = 0 THEN new.value WHEN peak < new.value THEN new.value ELSE peak END,
        readings = readings + 1
        WHERE id = new.channel;
END;
CREATE TRIGGER reading_struck AFTER UPDATE OF struck ON reading WHEN new.struck AND NOT old.struck BEGIN
    UPDATE channel SET
        peak = CASE WHEN readings = 1 OR new.value >= peak THEN NULL ELSE peak END,
        readings = readings - 1
        WHERE id = new.channel;
END;
CREATE TRIGGER reading_restored AFTER UPDATE OF struck ON reading WHEN old.struck AND NOT new.struck BEGIN
    UPDATE channel SET
        peak = CASE WHEN readings = 0 THEN new.value WHEN peak < new.value THEN new.value ELSE peak END,
        readings = readings + 1
        WHERE id = new.channel;
END;
CREATE TRIGGER reading_kept BEFORE UPDATE OF channel, at_ms, seq, value, by_hand ON reading BEGIN
    SELECT raise(ABORT, 'a reading is struck, never altered');
END;

CREATE TABLE pack (
    id INTEGER PRIMARY KEY,
    firing INTEGER NOT NULL REFERENCES firing,
    place TEXT NOT NULL,
    cone_type TEXT NOT NULL CONSTRAINT "a pack is of a known series of cones" CHECK (cone_type IN
        ('self-supporting', 'large', 'small', 'self-supporting iron-free', 'large iron-free')),
    leans_left INTEGER NOT NULL CHECK (leans_left IN (0, 1))
) STRICT;
CREATE INDEX pack_of_firing ON pack (firing);
CREATE TABLE pack_cone (
    pack INTEGER NOT NULL REFERENCES pack,
    position INTEGER NOT NULL CHECK (position >= 0),
    cone TEXT NOT NULL CONSTRAINT "a cone has a name" CHECK (cone <> ''),
    PRIMARY KEY (pack, position),
    UNIQUE (pack, cone)
) STRICT, WITHOUT ROWID;

CREATE TABLE look (
    id INTEGER PRIMARY KEY,
    pack INTEGER NOT NULL REFERENCES pack,
    at_ms INTEGER NOT NULL,
    cone TEXT NOT NULL,
    hour REAL NOT NULL CONSTRAINT "a cone's hour is 0 to 6, in halves"
        CHECK (hour BETWEEN 0 AND 6 AND hour * 2 = CAST(hour * 2 AS INTEGER)),
    cold INTEGER NOT NULL CHECK (cold IN (0, 1)),
    struck INTEGER NOT NULL CHECK (struck IN (0, 1)),
    FOREIGN KEY (pack, cone) REFERENCES pack_cone (pack, cone)
) STRICT;
CREATE INDEX look_of_pack ON look (pack, cone);
CREATE TRIGGER look_kept BEFORE UPDATE OF pack, at_ms, cone, hour, cold ON look BEGIN
    SELECT raise(ABORT, 'a look is struck, never altered');
END;

CREATE TABLE setting (
    id INTEGER PRIMARY KEY,
    firing INTEGER NOT NULL REFERENCES firing,
    at_ms INTEGER NOT NULL,
    what TEXT NOT NULL CONSTRAINT "a setting says what was set" CHECK (trim(what) <> ''),
    value TEXT NOT NULL,
    struck INTEGER NOT NULL CHECK (struck IN (0, 1))
) STRICT;
CREATE INDEX setting_of_firing ON setting (firing, at_ms);
CREATE TRIGGER setting_kept BEFORE UPDATE OF firing, at_ms, what, value ON setting BEGIN
    SELECT raise(ABORT, 'a setting is struck, never altered');
END;

CREATE TABLE note (
    id INTEGER PRIMARY KEY,
    firing INTEGER NOT NULL REFERENCES firing,
    at_ms INTEGER NOT NULL,
    text TEXT NOT NULL CONSTRAINT "a note has words" CHECK (trim(text) <> ''),
    struck INTEGER NOT NULL CHECK (struck IN (0, 1))
) STRICT;
CREATE INDEX note_of_firing ON note (firing, at_ms);
CREATE TRIGGER note_kept BEFORE UPDATE OF firing, at_ms, text ON note BEGIN
    SELECT raise(ABORT, 'a note is struck, never altered');
END;

CREATE TABLE piece (
    id INTEGER PRIMARY KEY,
    firing INTEGER NOT NULL REFERENCES firing,
    name TEXT NOT NULL,
    glaze TEXT NOT NULL,
    shelf TEXT NOT NULL,
    catcher INTEGER NOT NULL CHECK (catcher IN (0, 1)),
    sagger INTEGER NOT NULL CHECK (sagger IN (0, 1))
) STRICT;
CREATE INDEX piece_of_firing ON piece (firing);
CREATE INDEX piece_of_glaze ON piece (glaze);
CREATE TABLE outcome (
    piece INTEGER PRIMARY KEY REFERENCES piece,
    crystals TEXT CONSTRAINT "crystals are none, few, many or covered"
        CHECK (crystals IN ('none', 'few', 'many', 'covered')),
    largest_mm REAL CONSTRAINT "a crystal's size is 0 to 10 m" CHECK (largest_mm BETWEEN 0 AND 10000),
    rings INTEGER CONSTRAINT "rings are counted from 0" CHECK (rings >= 0),
    faults TEXT NOT NULL,
    grade TEXT NOT NULL,
    note TEXT NOT NULL
) STRICT;

CREATE TABLE filed_offset (
    firing INTEGER NOT NULL REFERENCES firing,
    probe INTEGER NOT NULL REFERENCES probe,
    place TEXT NOT NULL,
    kiln INTEGER NOT NULL REFERENCES kiln,
    at_ms INTEGER NOT NULL,
    mean_C REAL NOT NULL CONSTRAINT "an offset is within 1000 degrees" CHECK (abs(mean_C) <= 1000),
    sd_C REAL NOT NULL CONSTRAINT "a standard deviation is 0 to 1000 degrees" CHECK (sd_C BETWEEN 0 AND 1000),
    PRIMARY KEY (firing, probe, place)
) STRICT, WITHOUT ROWID;
CREATE INDEX offset_of_series ON filed_offset (kiln, probe, place, at_ms);

CREATE TABLE alarm (
    id INTEGER PRIMARY KEY,
    firing INTEGER NOT NULL REFERENCES firing,
    level TEXT NOT NULL CONSTRAINT "an alarm has a level" CHECK (level <> ''),
    cause TEXT NOT NULL CONSTRAINT "an alarm has a cause" CHECK (cause <> ''),
    detail TEXT NOT NULL,
    first_ms INTEGER NOT NULL,
    acknowledged_ms INTEGER,
    acknowledged_by TEXT,
    ended_ms INTEGER,
    CONSTRAINT "an acknowledgement says when and by whom"
        CHECK ((acknowledged_ms IS NULL) = (acknowledged_by IS NULL)),
    CONSTRAINT "an alarm ends no earlier than it began" CHECK (ended_ms >= first_ms)
) STRICT;
CREATE INDEX alarm_of_firing ON alarm (firing, first_ms);

-- What happened to the log itself: a line struck or corrected, logging resumed, an instrument lost.
CREATE TABLE event (
    id INTEGER PRIMARY KEY,
    firing INTEGER REFERENCES firing,
    at_ms INTEGER NOT NULL,
    kind TEXT NOT NULL CONSTRAINT "an event has a kind" CHECK (kind <> ''),
    detail TEXT NOT NULL
) STRICT;
CREATE INDEX event_of_firing ON event (firing, at_ms);
)sql";

constexpr std::array all{Migration{version1}, Migration{schemaVersion2}};

} // namespace

std::span<const Migration> migrations() {
    return all;
}

} // namespace ringhold
