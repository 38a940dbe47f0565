//! The card in Japanese. No blank parts words or sentences; names come before what is said of them.

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
    slide_forward: "つまみを手前に、止まるまで引きます。",
    point_at_hinge: Forms {
        one: "ダイヤルの針を蝶番に向けます。",
        many: "すべてのダイヤルの針を蝶番に向けます。",
    },
    turn_as_drawn: Forms {
        one: "ダイヤルを図のとおりに回します。",
        many: "そこから、各ダイヤルを図のとおりに回します。",
    },
    slide_back: "つまみを蝶番のほうへ、止まるまで押します。",
    lift: "ふたの手前の縁を持ち上げます。",
    lower: "つまみは蝶番側のまま、ふたを下ろします。",
    shut: "つまみを手前に、止まるまで引きます。",
    turn_away: Forms {
        one: "ダイヤルを合わせた目盛りからずらします。",
        many: "すべてのダイヤルを、合わせた目盛りからずらします。",
    },
    stuck_heading: "動きにくいとき",
    stuck: [
        "無理に動かさないでください。つまみを手前に引き、針をもう一度目盛りにぴったり合わせて、やり直します。",
        "ダイヤルは、つまみを手前いっぱいに引いたときだけ回ります。",
        "湿気で木の動きが固くなります。乾いた部屋に数日置いてください。",
    ],
    cautions_heading: "ご注意:",
    cautions: [
        "小さな部品があります。小さなお子さまの手の届かない所に置いてください。",
        "ふたに指をはさまないようにしてください。",
        "秘密を守る箱です。貴重品を守る物ではありません。",
    ],
    between_sentences: "",
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
            (Some(name), None) => format!("{name}へ:箱の開け方"),
            (Some(name), Some(of)) => format!("{name}へ:「{of}」の開け方"),
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
            1 => "ダイヤルを秘密の目盛りまで回します。",
            _ => "各ダイヤルをそれぞれの秘密の目盛りまで回します。",
        };
        format!("{turn}目盛りはこのカードに書いてありません。{who}に聞いてください。")
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
