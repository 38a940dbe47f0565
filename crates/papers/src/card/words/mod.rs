//! The card's words. A language is a table of phrases and a few ways of putting a figure or a name
//! into one; a language that lacks any of them does not compile.

mod english;
mod french;
mod german;
mod japanese;
mod spanish;

use latchwright_drawing::PICTURES;
use latchwright_model::{Design, Labels, Language};

use super::steps::{self, Deed};
use super::text::{Action, CardStep, CardText, DialTurn, TurnWords};

/// The phrases that are the same on every card.
pub(super) struct Phrases {
    /// Language tag of BCP 47.
    tag: &'static str,
    /// Where no name is given.
    unnamed: &'static str,
    /// At the lid's hinged edge.
    hinge: &'static str,
    open_heading: &'static str,
    close_heading: &'static str,
    slide_forward: &'static str,
    point_at_hinge: Forms,
    /// Before the turns of the dials; of several dials, each from the mark nearest the hinge.
    turn_as_drawn: Forms,
    slide_back: &'static str,
    lift: &'static str,
    lower: &'static str,
    shut: &'static str,
    turn_away: Forms,
    stuck_heading: &'static str,
    /// Do not force; when dials turn; damp wood.
    stuck: [&'static str; 3],
    /// With its stop, and a blank where sentences are parted by one.
    cautions_heading: &'static str,
    /// Small parts; fingers; no valuables.
    cautions: [&'static str; 3],
    /// What parts two sentences.
    between_sentences: &'static str,
    /// What parts the members of a list.
    between_members: &'static str,
    /// What the pictures of [`PICTURES`] show, in that order.
    pictures: [&'static str; PICTURES.len()],
}

/// A phrase about one dial, and about several.
pub(super) struct Forms {
    one: &'static str,
    many: &'static str,
}

impl Forms {
    fn of(&self, count: usize) -> &'static str {
        if count == 1 { self.one } else { self.many }
    }
}

/// One language. Names and labels come trimmed and on one line.
pub(super) trait Words {
    /// Its phrases.
    fn phrases(&self) -> &'static Phrases;

    /// What stands before a name, and the name as it is addressed.
    fn addressed(&self, name: &str) -> (String, String);

    /// The maker's name as it is signed.
    fn signed(&self, name: &str) -> String;

    /// Title of the document; name of the recipient and title of the box, where there are any.
    fn title(&self, name: Option<&str>, of: Option<&str>) -> String;

    /// What the lid's picture shows.
    fn lid(&self, dials: usize) -> String;

    /// Where the dials stand on it; `list` names a label for each dial.
    fn setting(&self, dials: usize, list: &str) -> String;

    /// Turn the dials to marks that are not told, and who knows them, if that is known.
    fn turn_to_secret(&self, dials: usize, maker: Option<&str>) -> String;

    /// The words of a turn to `label`.
    fn turn(&self, turn: &DialTurn, label: &str) -> TurnWords;
}

/// The words of a language.
pub(super) fn of(language: Language) -> &'static dyn Words {
    match language {
        Language::English => &english::English,
        Language::German => &german::German,
        Language::French => &french::French,
        Language::Spanish => &spanish::Spanish,
        Language::Japanese => &japanese::Japanese,
    }
}

/// The card of `design` in these words.
pub(super) fn card_text(design: &Design, words: &dyn Words) -> CardText {
    let (card, phrases) = (&design.card, words.phrases());
    let (name, from, title) = (
        one_line(&card.recipient),
        one_line(&card.from),
        one_line(&design.title),
    );
    let (salutation, heading) = match given(&name) {
        None => (String::new(), phrases.unnamed.to_owned()),
        Some(name) => words.addressed(name),
    };
    let tell = |deeds: Vec<Deed>| {
        let step = |deed| step(design, words, deed);
        deeds.into_iter().map(step).collect()
    };
    CardText {
        language: phrases.tag,
        title: words.title(given(&name), given(&title)),
        salutation,
        heading,
        greeting: lines(&card.greeting),
        signature: given(&from).map_or_else(String::new, |from| words.signed(from)),
        hinge: phrases.hinge,
        lid_described: lid_described(design, words),
        open_heading: phrases.open_heading,
        open: tell(steps::open(design)),
        close_heading: phrases.close_heading,
        close: tell(steps::close(design)),
        stuck_heading: phrases.stuck_heading,
        stuck: phrases.stuck.to_vec(),
        cautions_heading: phrases.cautions_heading,
        cautions: phrases.cautions.to_vec(),
        between_sentences: phrases.between_sentences,
    }
}

fn step(design: &Design, words: &dyn Words, deed: Deed) -> CardStep {
    let actions = deed.actions(design);
    let turns = actions.iter().filter_map(|action| match action {
        Action::Turn(turn) => {
            let label = spoken(design, words, turn.dial, &turn.to_label);
            Some(kept_together(words.turn(turn, &label)))
        }
        _ => None,
    });
    CardStep {
        text: sentence(design, words, deed),
        turns: turns.collect(),
        actions,
    }
}

/// A short label stays on the line of the word before it; a long one may need a line of its own.
fn kept_together(mut words: TurnWords) -> TurnWords {
    const SHORT: usize = 6;
    if words.label.chars().count() <= SHORT && words.before.ends_with(' ') {
        words.before.pop();
        words.before.push('\u{a0}');
    }
    words
}

fn sentence(design: &Design, words: &dyn Words, deed: Deed) -> String {
    let (phrases, dials) = (words.phrases(), design.dials.len());
    let fixed = match deed {
        Deed::MakeReady if dials > 0 => {
            let (slide, point) = (phrases.slide_forward, phrases.point_at_hinge.of(dials));
            return format!("{slide}{}{point}", phrases.between_sentences);
        }
        Deed::SetDials if !design.card.show_combination => {
            let maker = one_line(&design.card.from);
            return words.turn_to_secret(dials, given(&maker));
        }
        Deed::MakeReady => phrases.slide_forward,
        Deed::SetDials => phrases.turn_as_drawn.of(dials),
        Deed::SlideBack => phrases.slide_back,
        Deed::Lift => phrases.lift,
        Deed::Lower => phrases.lower,
        Deed::Shut => phrases.shut,
        Deed::TurnAway => phrases.turn_away.of(dials),
    };
    fixed.to_owned()
}

fn lid_described(design: &Design, words: &dyn Words) -> String {
    let (phrases, dials) = (words.phrases(), design.dials.len());
    let text = words.lid(dials);
    if !design.card.show_combination || dials == 0 {
        return text;
    }
    let labels = design.dials.iter().enumerate().map(|(index, dial)| {
        let label = one_line(&dial.label(design.digit(index)));
        spoken(design, words, index, &label)
    });
    let list = labels.collect::<Vec<_>>().join(phrases.between_members);
    let setting = words.setting(dials, &list);
    format!("{text}{}{setting}", phrases.between_sentences)
}

/// A label as it is said: the name of a picture in this language, whatever else as the maker has it.
fn spoken(design: &Design, words: &dyn Words, dial: usize, label: &str) -> String {
    let pictures = design
        .dials
        .get(dial)
        .is_some_and(|dial| matches!(dial.labels, Labels::Pictures(_)));
    let named = PICTURES.iter().zip(words.phrases().pictures);
    named
        .filter(|(name, _)| pictures && **name == label)
        .map(|(_, said)| said)
        .next()
        .unwrap_or(label)
        .to_owned()
}

fn given(words: &str) -> Option<&str> {
    (!words.is_empty()).then_some(words)
}

/// `count` things, with the noun that goes with that count.
fn counted(count: u32, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

/// The maker's words a line each, without blank lines at either end.
fn lines(words: &str) -> Vec<String> {
    words.trim().lines().map(one_line).collect()
}

/// White space of any kind and length as one blank.
pub(super) fn one_line(words: &str) -> String {
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}
