//! The card in Spanish.

use super::super::text::{DialTurn, TurnWords};
use super::{Forms, Phrases, Words, counted};

/// Spanish, with the "tú" of a gift, in words that are understood on both sides of the ocean.
pub(super) struct Spanish;

const PHRASES: Phrases = Phrases {
    tag: "es",
    unnamed: "Una caja con un secreto",
    hinge: "bisagra",
    open_heading: "Para abrir",
    close_heading: "Para cerrar",
    slide_forward: "Desliza el botón hacia ti hasta el tope.",
    point_at_hinge: Forms {
        one: "Apunta el dial hacia la bisagra.",
        many: "Apunta cada dial hacia la bisagra.",
    },
    turn_as_drawn: Forms {
        one: "Gira el dial como en el dibujo:",
        many: "Desde ahí, gira cada dial como en el dibujo:",
    },
    slide_back: "Desliza el botón hacia la bisagra hasta el tope.",
    lift: "Levanta la tapa por el borde delantero.",
    lower: "Deja el botón del lado de la bisagra y baja la tapa.",
    shut: "Desliza el botón hacia ti hasta el tope.",
    turn_away: Forms {
        one: "Gira el dial para apartarlo de su marca.",
        many: "Gira cada dial para apartarlo de su marca.",
    },
    stuck_heading: "Si se atasca",
    stuck: [
        "Nunca lo fuerces. Desliza el botón hacia ti, vuelve a poner cada dial justo en su marca e inténtalo otra vez.",
        "Los diales solo giran mientras el botón está del todo hacia ti.",
        "El aire húmedo hincha la madera: deja la caja unos días en un cuarto seco.",
    ],
    cautions_heading: "Atención: ",
    cautions: [
        "Mantener lejos de niños pequeños: tiene piezas pequeñas.",
        "Cuidado con los dedos bajo la tapa.",
        "Guarda un secreto, no objetos de valor.",
    ],
    between_sentences: " ",
    between_members: ", ",
    pictures: [
        "ancla", "manzana", "campana", "pájaro", "barco", "pez", "llave", "hoja", "luna",
        "estrella", "sol", "árbol",
    ],
};

impl Words for Spanish {
    fn phrases(&self) -> &'static Phrases {
        &PHRASES
    }

    fn addressed(&self, name: &str) -> (String, String) {
        ("Para".to_owned(), name.to_owned())
    }

    fn signed(&self, name: &str) -> String {
        format!("— {name}")
    }

    // Of what gender the box's name is nobody knows, so no pronoun stands for it.
    fn title(&self, name: Option<&str>, of: Option<&str>) -> String {
        match (name, of) {
            (None, None) => "Cómo abrir la caja".to_owned(),
            (None, Some(of)) => format!("{of}: cómo se abre"),
            (Some(name), None) => format!("Para {name}: cómo abrir la caja"),
            (Some(name), Some(of)) => format!("Para {name}: {of}, y cómo se abre"),
        }
    }

    fn lid(&self, dials: usize) -> String {
        let dials = match dials {
            0 => "sin diales y con un botón deslizante".to_owned(),
            1 => "con un dial y un botón deslizante".to_owned(),
            count => format!("con {count} diales y un botón deslizante"),
        };
        format!("La tapa vista desde arriba, con la bisagra en lo alto, {dials}.")
    }

    fn setting(&self, dials: usize, list: &str) -> String {
        match dials {
            1 => format!("El dial está en {list}."),
            _ => format!("Los diales están en {list}."),
        }
    }

    // After a colon the name needs no preposition, which would run together with its article.
    fn turn_to_secret(&self, dials: usize, maker: Option<&str>) -> String {
        let (turn, pronoun) = match dials {
            1 => (
                "Gira el dial hasta su marca secreta. No está en esta tarjeta.",
                "la",
            ),
            _ => (
                "Gira cada dial hasta su marca secreta. Las marcas no están en esta tarjeta.",
                "las",
            ),
        };
        let who = match maker {
            Some(name) => format!("Quien {pronoun} conoce: {name}."),
            None => "Pregunta a quien hizo la caja.".to_owned(),
        };
        format!("{turn} {who}")
    }

    fn turn(&self, turn: &DialTurn, label: &str) -> TurnWords {
        let way = if turn.clockwise {
            "sentido horario"
        } else {
            "sentido antihorario"
        };
        TurnWords {
            before: format!("Dial\u{a0}{} en ", turn.dial + 1),
            label: label.to_owned(),
            after: "",
            lines: match turn.marks {
                0 => vec!["se queda ahí".to_owned()],
                marks => vec![way.to_owned(), counted(marks, "marca", "marcas")],
            },
        }
    }
}
