//! The card in German.

use super::super::text::{DialTurn, TurnWords};
use super::{Forms, Phrases, Words, counted};

/// German, in the infinitive of instructions, which says neither "du" nor "Sie".
pub(super) struct German;

const PHRASES: Phrases = Phrases {
    tag: "de",
    unnamed: "Ein Kästchen mit Geheimnis",
    hinge: "Scharnier",
    open_heading: "Öffnen",
    close_heading: "Schließen",
    slide_forward: "Den Schieber bis zum Anschlag zu sich ziehen.",
    point_at_hinge: Forms {
        one: "Den Zeiger des Knopfs auf das Scharnier richten.",
        many: "Die Zeiger aller Knöpfe auf das Scharnier richten.",
    },
    turn_as_drawn: Forms {
        one: "Den Knopf wie gezeichnet drehen:",
        many: "Von dort jeden Knopf wie gezeichnet drehen:",
    },
    slide_back: "Den Schieber bis zum Anschlag Richtung Scharnier schieben.",
    lift: "Den Deckel an der Vorderkante anheben.",
    lower: "Den Schieber hinten beim Scharnier lassen und den Deckel zuklappen.",
    shut: "Den Schieber bis zum Anschlag zu sich ziehen.",
    turn_away: Forms {
        one: "Den Knopf von seiner Marke wegdrehen.",
        many: "Jeden Knopf von seiner Marke wegdrehen.",
    },
    stuck_heading: "Wenn es klemmt",
    stuck: [
        "Nie mit Gewalt. Den Schieber zu sich ziehen, jeden Zeiger noch einmal genau auf seine Marke stellen und es wieder versuchen.",
        "Die Knöpfe drehen sich nur, solange der Schieber ganz vorn ist.",
        "Feuchte Luft macht Holz schwergängig: Das Kästchen einige Tage in einen trockenen Raum stellen.",
    ],
    cautions_heading: "Bitte beachten: ",
    cautions: [
        "Von kleinen Kindern fernhalten: enthält kleine Teile.",
        "Unter dem Deckel auf die Finger achten.",
        "Das Kästchen hütet ein Geheimnis, keine Wertsachen.",
    ],
    between_sentences: " ",
    between_members: ", ",
    pictures: [
        "Anker",
        "Apfel",
        "Glocke",
        "Vogel",
        "Boot",
        "Fisch",
        "Schlüssel",
        "Blatt",
        "Mond",
        "Stern",
        "Sonne",
        "Baum",
    ],
};

impl Words for German {
    fn phrases(&self) -> &'static Phrases {
        &PHRASES
    }

    fn addressed(&self, name: &str) -> (String, String) {
        ("Für".to_owned(), name.to_owned())
    }

    fn signed(&self, name: &str) -> String {
        format!("— {name}")
    }

    // Of what gender the box's name is nobody knows, so no pronoun stands for it.
    fn title(&self, name: Option<&str>, of: Option<&str>) -> String {
        match (name, of) {
            (None, None) => "Wie das Kästchen aufgeht".to_owned(),
            (None, Some(of)) => format!("{of} – Anleitung zum Öffnen"),
            (Some(name), None) => format!("Für {name}: Wie das Kästchen aufgeht"),
            (Some(name), Some(of)) => format!("Für {name}: {of} – Anleitung zum Öffnen"),
        }
    }

    fn lid(&self, dials: usize) -> String {
        let dials = match dials {
            0 => "ohne Drehknopf, mit einem Schieber".to_owned(),
            1 => "mit einem Drehknopf und einem Schieber".to_owned(),
            count => format!("mit {count} Drehknöpfen und einem Schieber"),
        };
        format!("Der Deckel von oben, das Scharnier am oberen Rand, {dials}.")
    }

    fn setting(&self, dials: usize, list: &str) -> String {
        match dials {
            1 => format!("Der Zeiger steht auf {list}."),
            _ => format!("Die Zeiger stehen auf {list}."),
        }
    }

    // The name stays in the nominative, whatever the maker has written.
    fn turn_to_secret(&self, dials: usize, maker: Option<&str>) -> String {
        let turn = match dials {
            1 => "Den Knopf auf seine geheime Marke drehen. Sie steht",
            _ => "Jeden Knopf auf seine geheime Marke drehen. Die Marken stehen",
        };
        let who = match maker {
            Some(name) => format!("Wer sie kennt: {name}."),
            None => "Wer das Kästchen gebaut hat, kennt sie.".to_owned(),
        };
        format!("{turn} nicht auf dieser Karte. {who}")
    }

    fn turn(&self, turn: &DialTurn, label: &str) -> TurnWords {
        let way = if turn.clockwise {
            "rechtsherum"
        } else {
            "linksherum"
        };
        TurnWords {
            before: format!("Knopf\u{a0}{} auf ", turn.dial + 1),
            label: label.to_owned(),
            after: "",
            lines: match turn.marks {
                0 => vec!["bleibt stehen".to_owned()],
                marks => vec![way.to_owned(), counted(marks, "Marke", "Marken")],
            },
        }
    }
}
