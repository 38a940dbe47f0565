//! The card in Japanese. No blank parts words or sentences; names come before what is said of them.
//! A zero-width space stands where a line may end, between phrases and not within them.

use super::super::text::{DialTurn, TurnWords};
use super::{Forms, Phrases, Words};

/// Japanese, in the polite form. An honorific is the maker's to write with the name.
pub(super) struct Japanese;

const PHRASES: Phrases = Phrases {
    tag: "ja",
    unnamed: "ひみつの箱",
    hinge: "蝶番",
    open_heading: "開け方",
    close_heading: "閉め方",
    slide_forward: "つまみを\u{200b}手前に、\u{200b}止まるまで\u{200b}引きます。",
    point_at_hinge: Forms {
        one: "ダイヤルの\u{200b}針を\u{200b}蝶番に\u{200b}向けます。",
        many: "すべての\u{200b}ダイヤルの\u{200b}針を\u{200b}蝶番に\u{200b}向けます。",
    },
    turn_as_drawn: Forms {
        one: "ダイヤルを\u{200b}図の\u{200b}とおりに\u{200b}回します。",
        many: "そこから、\u{200b}各ダイヤルを\u{200b}図の\u{200b}とおりに\u{200b}回します。",
    },
    slide_back: "つまみを\u{200b}蝶番の\u{200b}ほうへ、\u{200b}止まるまで\u{200b}押します。",
    lift: "ふたの\u{200b}手前の\u{200b}縁を\u{200b}持ち上げます。",
    lower: "つまみは\u{200b}蝶番側の\u{200b}まま、\u{200b}ふたを\u{200b}下ろします。",
    shut: "つまみを\u{200b}手前に、\u{200b}止まるまで\u{200b}引きます。",
    turn_away: Forms {
        one: "ダイヤルを\u{200b}合わせた\u{200b}目盛りから\u{200b}ずらします。",
        many: "すべての\u{200b}ダイヤルを、\u{200b}合わせた\u{200b}目盛りから\u{200b}ずらします。",
    },
    stuck_heading: "動きにくいとき",
    stuck: [
        "無理に\u{200b}動かさないで\u{200b}ください。\u{200b}つまみを\u{200b}手前に\u{200b}引き、\u{200b}針を\u{200b}もう一度\u{200b}目盛りに\u{200b}ぴったり\u{200b}合わせて、\u{200b}やり直します。",
        "ダイヤルは、\u{200b}つまみを\u{200b}手前\u{200b}いっぱいに\u{200b}引いた\u{200b}ときだけ\u{200b}回ります。",
        "湿気で\u{200b}木が\u{200b}動きにくく\u{200b}なります。\u{200b}乾いた\u{200b}部屋に\u{200b}数日\u{200b}置いて\u{200b}ください。",
    ],
    cautions_heading: "ご注意：\u{200b}",
    cautions: [
        "小さな\u{200b}部品が\u{200b}あります。\u{200b}小さな\u{200b}お子さまの\u{200b}手の\u{200b}届かない\u{200b}所に\u{200b}置いて\u{200b}ください。",
        "ふたに\u{200b}指を\u{200b}はさまないように\u{200b}して\u{200b}ください。",
        "秘密を\u{200b}守る\u{200b}箱です。\u{200b}貴重品を\u{200b}守る\u{200b}物では\u{200b}ありません。",
    ],
    between_sentences: "\u{200b}",
    between_members: "、",
    pictures: [
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
    ],
};

impl Words for Japanese {
    fn phrases(&self) -> &'static Phrases {
        &PHRASES
    }

    fn addressed(&self, name: &str) -> (String, String) {
        (String::new(), format!("{name}へ"))
    }

    fn signed(&self, name: &str) -> String {
        format!("{name}より")
    }

    fn title(&self, name: Option<&str>, of: Option<&str>) -> String {
        match (name, of) {
            (None, None) => "箱の開け方".to_owned(),
            (None, Some(of)) => format!("「{of}」の開け方"),
            (Some(name), None) => format!("{name}へ：箱の開け方"),
            (Some(name), Some(of)) => format!("{name}へ：「{of}」の開け方"),
        }
    }

    fn lid(&self, dials: usize) -> String {
        let dials = match dials {
            0 => "ダイヤルはなく、つまみが1個あります".to_owned(),
            count => format!("ダイヤル{count}個と、つまみが1個あります"),
        };
        format!("上から見たふたです。上が蝶番側で、{dials}。")
    }

    fn setting(&self, _: usize, list: &str) -> String {
        format!("ダイヤルの針は{list}を指しています。")
    }

    fn turn_to_secret(&self, dials: usize, maker: Option<&str>) -> String {
        let who = maker.unwrap_or("作った人");
        let turn = match dials {
            1 => "ダイヤルを\u{200b}秘密の\u{200b}目盛りまで\u{200b}回します。",
            _ => "各ダイヤルを\u{200b}それぞれの\u{200b}秘密の\u{200b}目盛りまで\u{200b}回します。",
        };
        format!(
            "{turn}\u{200b}目盛りは\u{200b}この\u{200b}カードに\u{200b}書いて\u{200b}ありません。\u{200b}{who}に\u{200b}聞いて\u{200b}ください。"
        )
    }

    fn turn(&self, turn: &DialTurn, label: &str) -> TurnWords {
        let number = turn.dial + 1;
        let way = if turn.clockwise {
            "時計回りに"
        } else {
            "反時計回りに"
        };
        let (before, after, lines) = match turn.marks {
            0 => (
                format!("ダイヤル{number}は"),
                "のまま",
                vec!["回しません".to_owned()],
            ),
            marks => (
                format!("ダイヤル{number}を"),
                "へ",
                vec![way.to_owned(), format!("{marks}目盛り")],
            ),
        };
        TurnWords {
            before,
            label: label.to_owned(),
            after,
            lines,
        }
    }
}
