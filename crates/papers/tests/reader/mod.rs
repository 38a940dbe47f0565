//! A recipient who knows a few words of one language and understands nothing else: reads the card's
//! sentences back into what the hand does. Its words are written down here a second time, so that a
//! wrong one on the card is misread.

use latchwright_model::{Design, Labels, Language};
use latchwright_papers::{Action, CardStep, DialTurn, TurnWords};

/// What one reader knows.
pub struct Reader {
    /// The sentences' telling parts; each is found at most once in a sentence.
    deeds: [(&'static str, Action); 8],
    clockwise: &'static str,
    anticlockwise: &'static str,
    stays: &'static str,
    /// The line that counts one mark, and that counts `#` of them.
    one: &'static str,
    many: &'static str,
    /// Names of the pictures on dials, by what the design calls them.
    pictures: [(&'static str, &'static str); 12],
}

const NAMES: [&str; 12] = [
    "anchor", "apple", "bell", "bird", "boat", "fish", "key", "leaf", "moon", "star", "sun", "tree",
];

fn deeds(words: [&'static str; 8]) -> [(&'static str, Action); 8] {
    let [forward, point, back, stay, lift, lower, away, secret] = words;
    [
        (forward, Action::SlideForward),
        (point, Action::PointAtHinge),
        (back, Action::SlideBack),
        (stay, Action::SlideBack),
        (lift, Action::Lift),
        (lower, Action::Lower),
        (away, Action::TurnAway),
        (secret, Action::TurnToSecret),
    ]
}

fn pictures(said: [&'static str; 12]) -> [(&'static str, &'static str); 12] {
    core::array::from_fn(|index| (NAMES[index], said[index]))
}

impl Reader {
    /// Who reads `language`.
    pub fn of(language: Language) -> Self {
        match language {
            Language::English => english(),
            Language::German => german(),
            Language::French => french(),
            Language::Spanish => spanish(),
            Language::Japanese => japanese(),
        }
    }

    /// What the words of `steps` say is to be done, in this order.
    pub fn read(&self, design: &Design, steps: &[CardStep]) -> Vec<Action> {
        let mut done = Vec::new();
        for step in steps {
            let text = step.text.replace('\u{200b}', "");
            let mut found: Vec<(usize, &Action)> = self
                .deeds
                .iter()
                .filter_map(|(words, action)| Some((text.find(words)?, action)))
                .collect();
            found.sort_by_key(|(place, _)| *place);
            assert!(
                !found.is_empty() || !step.turns.is_empty(),
                "“{text}” says nothing"
            );
            done.extend(found.into_iter().map(|(_, action)| action.clone()));
            let turns = step.turns.iter();
            done.extend(turns.map(|turn| Action::Turn(self.read_turn(design, turn))));
        }
        done
    }

    fn read_turn(&self, design: &Design, words: &TurnWords) -> DialTurn {
        let dial = number(&words.before) - 1;
        let dial = usize::try_from(dial).expect("a few dials");
        let way = |word: &str| words.lines.iter().any(|line| line == word);
        let (clockwise, marks) = if way(self.stays) {
            assert_eq!(words.lines.len(), 1, "{words:?}");
            (true, 0)
        } else {
            let [line, count] = words.lines.as_slice() else {
                panic!("{words:?}")
            };
            assert!(
                line == self.clockwise || line == self.anticlockwise,
                "{line}"
            );
            let marks = number(count);
            let form = if marks == 1 { self.one } else { self.many };
            assert_eq!(*count, form.replace('#', &marks.to_string()));
            (line == self.clockwise, marks)
        };
        DialTurn {
            dial,
            clockwise,
            marks,
            positions: design.dials[dial].positions,
            to_label: self.label(design, dial, &words.label),
        }
    }

    fn label(&self, design: &Design, dial: usize, said: &str) -> String {
        let drawn = matches!(design.dials[dial].labels, Labels::Pictures(_));
        let known = self
            .pictures
            .iter()
            .find(|(_, word)| drawn && *word == said);
        known.map_or(said, |(name, _)| name).to_owned()
    }
}

fn number(words: &str) -> u32 {
    let digits: String = words.chars().filter(char::is_ascii_digit).collect();
    digits.parse().expect(words)
}

fn english() -> Reader {
    Reader {
        deeds: deeds([
            "knob towards you until it stops",
            "at the hinge",
            "towards the hinge until it stops",
            "Leave the knob towards the hinge",
            "Lift the lid",
            "lower the lid",
            "away from its mark",
            "to its secret mark",
        ]),
        clockwise: "clockwise",
        anticlockwise: "anticlockwise",
        stays: "stays there",
        one: "# mark",
        many: "# marks",
        pictures: pictures(NAMES),
    }
}

fn german() -> Reader {
    Reader {
        deeds: deeds([
            "bis zum Anschlag zu sich ziehen",
            "auf das Scharnier richten",
            "bis zum Anschlag Richtung Scharnier schieben",
            "Schieber hinten beim Scharnier lassen",
            "Deckel an der Vorderkante anheben",
            "Deckel zuklappen",
            "von seiner Marke wegdrehen",
            "auf seine geheime Marke drehen",
        ]),
        clockwise: "rechtsherum",
        anticlockwise: "linksherum",
        stays: "bleibt stehen",
        one: "# Marke",
        many: "# Marken",
        pictures: pictures([
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
        ]),
    }
}

fn french() -> Reader {
    Reader {
        deeds: deeds([
            "Tirer le curseur vers soi jusqu’à la butée",
            "molette vers la charnière.",
            "Pousser le curseur vers la charnière jusqu’à la butée",
            "Laisser le curseur du côté de la charnière",
            "Soulever le couvercle",
            "rabattre le couvercle",
            "l’écarter de son repère",
            "jusqu’à son repère secret",
        ]),
        clockwise: "sens horaire",
        anticlockwise: "sens antihoraire",
        stays: "ne bouge pas",
        one: "# repère",
        many: "# repères",
        pictures: pictures([
            "ancre", "pomme", "cloche", "oiseau", "bateau", "poisson", "clé", "feuille", "lune",
            "étoile", "soleil", "arbre",
        ]),
    }
}

fn spanish() -> Reader {
    Reader {
        deeds: deeds([
            "Desliza el botón hacia ti hasta el tope",
            "dial hacia la bisagra.",
            "Desliza el botón hacia la bisagra hasta el tope",
            "Deja el botón del lado de la bisagra",
            "Levanta la tapa",
            "baja la tapa",
            "apartarlo de su marca",
            "hasta su marca secreta",
        ]),
        clockwise: "sentido horario",
        anticlockwise: "sentido antihorario",
        stays: "se queda ahí",
        one: "# marca",
        many: "# marcas",
        pictures: pictures([
            "ancla", "manzana", "campana", "pájaro", "barco", "pez", "llave", "hoja", "luna",
            "estrella", "sol", "árbol",
        ]),
    }
}

fn japanese() -> Reader {
    Reader {
        deeds: deeds([
            "つまみを手前に、止まるまで引きます",
            "針を蝶番に向けます",
            "つまみを蝶番のほうへ、止まるまで押します",
            "つまみは蝶番側のまま",
            "縁を持ち上げます",
            "ふたを下ろします",
            "合わせた目盛りからずらします",
            "秘密の目盛りまで回します",
        ]),
        clockwise: "時計回りに",
        anticlockwise: "反時計回りに",
        stays: "回しません",
        one: "#目盛り",
        many: "#目盛り",
        pictures: pictures([
            "いかり",
            "りんご",
            "ベル",
            "鳥",
            "船",
            "魚",
            "かぎ",
            "葉",
            "月",
            "星",
            "太陽",
            "木",
        ]),
    }
}
