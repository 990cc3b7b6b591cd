namespace SectionScan.Archive.Storage;

/// <summary>The library's tables, as the steps that make them. A step, once released, is never changed; a new form is a new step.</summary>
internal static class LibrarySchema
{
    /// <summary>Marks the file as a section library: the letters SSlb.</summary>
    public const int ApplicationId = 0x53536C62;

    /// <summary>The form that the last step leads to.</summary>
    public static int Version => Steps.Count;

    /// <summary>Step n leads from form n to form n + 1.</summary>
    public static IReadOnlyList<string> Steps { get; } =
    [
        """
        CREATE TABLE head (
            id INTEGER PRIMARY KEY,
            name TEXT NOT NULL COLLATE NOCASE UNIQUE
        ) STRICT;

        CREATE TABLE port (
            id INTEGER PRIMARY KEY,
            head_id INTEGER NOT NULL REFERENCES head (id),
            kind TEXT NOT NULL CHECK (kind IN ('intake', 'exhaust')),
            cylinder INTEGER NOT NULL,
            mark TEXT NOT NULL COLLATE NOCASE,
            UNIQUE (head_id, kind, cylinder, mark)
        ) STRICT;

        -- The truth: the section document to the letter. What is derived from it stands in shape and can be made again.
        CREATE TABLE document (
            id INTEGER PRIMARY KEY,
            sha256 TEXT NOT NULL UNIQUE,
            photo_sha256 TEXT,
            json TEXT NOT NULL -- last, so that nothing else is read through its overflow pages
        ) STRICT;

        CREATE INDEX document_photo ON document (photo_sha256) WHERE photo_sha256 IS NOT NULL;

        CREATE TABLE shape (
            document_id INTEGER PRIMARY KEY REFERENCES document (id),
            area_mm2 REAL NOT NULL,
            width_mm REAL NOT NULL,
            height_mm REAL NOT NULL,
            recipe INTEGER NOT NULL,
            descriptor BLOB NOT NULL
        ) STRICT;

        CREATE INDEX shape_area ON shape (area_mm2);

        CREATE TABLE entry (
            id INTEGER PRIMARY KEY AUTOINCREMENT
        ) STRICT;

        -- Every revision is whole; nothing in it is ever changed.
        CREATE TABLE revision (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            entry_id INTEGER NOT NULL REFERENCES entry (id),
            number INTEGER NOT NULL,
            action TEXT NOT NULL CHECK (action IN ('added', 'revised', 'removed', 'restored')),
            reason TEXT NOT NULL,
            at TEXT NOT NULL,
            port_id INTEGER NOT NULL REFERENCES port (id),
            station INTEGER NOT NULL,
            stage TEXT NOT NULL COLLATE NOCASE,
            notes TEXT NOT NULL,
            document_id INTEGER NOT NULL REFERENCES document (id),
            UNIQUE (entry_id, number)
        ) STRICT;

        CREATE INDEX revision_document ON revision (document_id);

        CREATE TABLE revision_tag (
            revision_id INTEGER NOT NULL REFERENCES revision (id),
            position INTEGER NOT NULL,
            tag TEXT NOT NULL COLLATE NOCASE,
            PRIMARY KEY (revision_id, position)
        ) STRICT, WITHOUT ROWID;

        CREATE INDEX revision_tag_word ON revision_tag (tag);

        -- base_value and base_unit: the same number in the unit that its kind is compared in.
        CREATE TABLE revision_field (
            revision_id INTEGER NOT NULL REFERENCES revision (id),
            position INTEGER NOT NULL,
            name TEXT NOT NULL COLLATE NOCASE,
            value REAL NOT NULL,
            unit TEXT NOT NULL,
            base_value REAL NOT NULL,
            base_unit TEXT NOT NULL,
            PRIMARY KEY (revision_id, position)
        ) STRICT, WITHOUT ROWID;

        CREATE INDEX revision_field_name ON revision_field (name, base_value);

        -- Which revision holds now; derived from revision, kept so that a place can be unique and lists are quick.
        CREATE TABLE current_revision (
            entry_id INTEGER PRIMARY KEY REFERENCES entry (id),
            revision_id INTEGER NOT NULL UNIQUE REFERENCES revision (id),
            port_id INTEGER NOT NULL REFERENCES port (id),
            station INTEGER NOT NULL,
            stage TEXT NOT NULL COLLATE NOCASE,
            is_removed INTEGER NOT NULL CHECK (is_removed IN (0, 1))
        ) STRICT;

        CREATE UNIQUE INDEX current_revision_place ON current_revision (port_id, station, stage) WHERE is_removed = 0;

        CREATE VIRTUAL TABLE words USING fts5 (
            head, port, station, notes, tags, fields,
            tokenize = "unicode61 remove_diacritics 2", prefix = '2 3'
        );

        CREATE TRIGGER document_stays BEFORE UPDATE ON document BEGIN SELECT RAISE(ABORT, 'a document is never changed'); END;
        CREATE TRIGGER document_is_kept BEFORE DELETE ON document BEGIN SELECT RAISE(ABORT, 'a document is never deleted'); END;
        CREATE TRIGGER revision_stays BEFORE UPDATE ON revision BEGIN SELECT RAISE(ABORT, 'a revision is never changed'); END;
        CREATE TRIGGER revision_is_kept BEFORE DELETE ON revision BEGIN SELECT RAISE(ABORT, 'a revision is never deleted'); END;
        CREATE TRIGGER tag_stays BEFORE UPDATE ON revision_tag BEGIN SELECT RAISE(ABORT, 'a revision is never changed'); END;
        CREATE TRIGGER tag_is_kept BEFORE DELETE ON revision_tag BEGIN SELECT RAISE(ABORT, 'a revision is never deleted'); END;
        CREATE TRIGGER field_stays BEFORE UPDATE ON revision_field BEGIN SELECT RAISE(ABORT, 'a revision is never changed'); END;
        CREATE TRIGGER field_is_kept BEFORE DELETE ON revision_field BEGIN SELECT RAISE(ABORT, 'a revision is never deleted'); END;
        """,

        // Form 2: the original photos.
        """
        CREATE TABLE photo (
            sha256 TEXT NOT NULL PRIMARY KEY,
            name TEXT NOT NULL,
            content BLOB NOT NULL -- last, so that the name is read without it
        ) STRICT;

        CREATE TRIGGER photo_stays BEFORE UPDATE ON photo BEGIN SELECT RAISE(ABORT, 'a photo is never changed'); END;
        CREATE TRIGGER photo_is_kept BEFORE DELETE ON photo BEGIN SELECT RAISE(ABORT, 'a photo is never deleted'); END;
        """,
    ];
}
