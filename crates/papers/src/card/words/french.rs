//! The card in French. A no-break space stands before a colon, a narrow one before other high marks.

use super::super::text::{DialTurn, TurnWords};
use super::{Forms, Phrases, Words, counted};

/// French, in the infinitive of instructions, which says neither "tu" nor "vous".
pub(super) struct French;

const PHRASES: Phrases = Phrases {
    tag: "fr",
    unnamed: "Une boîte à secret",
    hinge: "charnière",
    open_heading: "Pour ouvrir",
    close_heading: "Pour fermer",
    slide_forward: "Tirer le curseur vers soi jusqu’à la butée.",
    point_at_hinge: Forms {
        one: "Pointer la molette vers la charnière.",
        many: "Pointer chaque molette vers la charnière.",
    },
    turn_as_drawn: Forms {
        one: "Tourner la molette comme sur le dessin\u{a0}:",
        many: "De là, tourner chaque molette comme sur le dessin\u{a0}:",
    },
    slide_back: "Pousser le curseur vers la charnière jusqu’à la butée.",
    lift: "Soulever le couvercle par le bord avant.",
    lower: "Laisser le curseur du côté de la charnière et rabattre le couvercle.",
    shut: "Tirer le curseur vers soi jusqu’à la butée.",
    turn_away: Forms {
        one: "Tourner la molette pour l’écarter de son repère.",
        many: "Tourner chaque molette pour l’écarter de son repère.",
    },
    stuck_heading: "Si cela coince",
    stuck: [
        "Ne jamais forcer. Tirer le curseur vers soi, remettre chaque molette exactement sur son repère et réessayer.",
        "Les molettes ne tournent que si le curseur est tiré à fond vers soi.",
        "L’air humide fait gonfler le bois\u{a0}: laisser la boîte quelques jours dans une pièce sèche.",
    ],
    cautions_heading: "Attention\u{a0}: ",
    cautions: [
        "Tenir hors de portée des jeunes enfants\u{a0}: contient de petites pièces.",
        "Gare aux doigts sous le couvercle.",
        "Cette boîte garde un secret, pas des objets de valeur.",
    ],
    between_sentences: " ",
    between_members: ", ",
    pictures: [
        "ancre", "pomme", "cloche", "oiseau", "bateau", "poisson", "clé", "feuille", "lune",
        "étoile", "soleil", "arbre",
    ],
};

impl Words for French {
    fn phrases(&self) -> &'static Phrases {
        &PHRASES
    }

    fn addressed(&self, name: &str) -> (String, String) {
        ("Pour".to_owned(), name.to_owned())
    }

    fn signed(&self, name: &str) -> String {
        format!("— {name}")
    }

    fn title(&self, name: Option<&str>, of: Option<&str>) -> String {
        match (name, of) {
            (None, None) => "Comment ouvrir la boîte".to_owned(),
            (None, Some(of)) => format!("{of}\u{a0}: comment l’ouvrir"),
            (Some(name), None) => format!("Pour {name}\u{a0}: comment ouvrir la boîte"),
            (Some(name), Some(of)) => format!("Pour {name}\u{a0}: {of}, et comment l’ouvrir"),
        }
    }

    fn lid(&self, dials: usize) -> String {
        let dials = match dials {
            0 => "sans molette, avec un curseur".to_owned(),
            1 => "avec une molette et un curseur".to_owned(),
            count => format!("avec {count} molettes et un curseur"),
        };
        format!("Le couvercle vu de dessus, charnière en haut, {dials}.")
    }

    fn setting(&self, dials: usize, list: &str) -> String {
        match dials {
            1 => format!("La molette est sur {list}."),
            _ => format!("Les molettes sont sur {list}."),
        }
    }

    // After a colon the name needs no preposition, which would run together with its article.
    fn turn_to_secret(&self, dials: usize, maker: Option<&str>) -> String {
        let (turn, pronoun) = match dials {
            1 => (
                "Tourner la molette jusqu’à son repère secret. Il ne figure pas sur cette carte.",
                "le",
            ),
            _ => (
                "Tourner chaque molette jusqu’à son repère secret. Les repères ne figurent pas sur cette carte.",
                "les",
            ),
        };
        let who = match maker {
            Some(name) => format!("Qui {pronoun} connaît\u{a0}: {name}."),
            None => format!("Pour {pronoun} connaître, demander à qui a fabriqué la boîte."),
        };
        format!("{turn} {who}")
    }

    fn turn(&self, turn: &DialTurn, label: &str) -> TurnWords {
        let way = if turn.clockwise {
            "sens horaire"
        } else {
            "sens antihoraire"
        };
        TurnWords {
            before: format!("Molette\u{a0}{} sur ", turn.dial + 1),
            label: label.to_owned(),
            after: "",
            lines: match turn.marks {
                0 => vec!["ne bouge pas".to_owned()],
                marks => vec![way.to_owned(), counted(marks, "repère", "repères")],
            },
        }
    }
}
