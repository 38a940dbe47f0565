//! Copies of work that is in no file yet, so that a crash or a kill loses seconds and not an evening.
//!
//! Every window has a copy of its own, written by a thread of its own and held by a lock that the
//! system lets go when the program ends, however it ends. A copy whose lock is free was left behind.
//! It is a design file like any other, with a first line that says which file it belongs to.

use std::fs::{self, File, OpenOptions};
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender, channel};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread::JoinHandle;
use std::time::{Duration, Instant, SystemTime};

use latchwright_model::Design;
use serde::{Deserialize, Serialize};

use crate::Session;
use crate::files::{FileError, Stamp, read_bounded, write_atomically};
use crate::format::{self, Comments};

/// How long after a change its copy is written: changes that follow each other share one.
pub const DELAY: Duration = Duration::from_secs(2);

/// Ending of a copy, and of the lock beside it.
const COPY: &str = "latch.ron";
const LOCK: &str = "lock";
/// What the first line of a copy begins with; to a reader of designs it is a remark.
const HEAD: &str = "// unsaved work ";

/// Work that is in no file yet.
#[derive(Debug, Clone)]
pub struct Work {
    /// As it is shown.
    pub design: Arc<Design>,
    /// The comments that go along with it.
    pub comments: Comments,
    /// The file that it was opened from or last saved to, and what that was like.
    pub file: Option<(PathBuf, Stamp)>,
}

/// Which file a copy belongs to.
#[derive(Debug, Default, Serialize, Deserialize)]
struct Origin {
    file: Option<String>,
    /// What the file was like: length and digest.
    mark: Option<(u64, u64)>,
}

enum Message {
    Keep(Work),
    Forget,
    Adopt(Box<Left>),
    /// Answered once nothing is left to be written.
    Settle(Sender<()>),
}

/// One window's copy: what it is told is written some seconds later, on a thread of its own.
///
/// Dropping it writes at once what is still to be written, and waits for that.
pub struct Copies {
    sender: Option<Sender<Message>>,
    thread: Option<JoinHandle<()>>,
    trouble: Arc<Mutex<Option<String>>>,
}

impl Copies {
    /// Copies go into `folder`, `delay` after a change; `wake` is called when one cannot be written.
    pub fn start(folder: &Path, delay: Duration, wake: impl Fn() + Send + 'static) -> Self {
        let trouble = Arc::new(Mutex::new(None));
        let (sender, inbox) = channel();
        let mut slot = Slot {
            folder: folder.to_owned(),
            held: None,
            adopted: Vec::new(),
        };
        let told = Arc::clone(&trouble);
        let failed = move |why: String| {
            *told.lock().unwrap_or_else(PoisonError::into_inner) = Some(why);
            wake();
        };
        let thread = std::thread::Builder::new()
            .name("copies".to_owned())
            .spawn(move || run(&mut slot, &inbox, delay, &failed));
        Self {
            sender: Some(sender),
            thread: thread.ok(),
            trouble,
        }
    }

    /// This is not saved: keep it.
    pub fn keep(&self, work: Work) {
        self.tell(Message::Keep(work));
    }

    /// It was saved or thrown away: the copy goes.
    pub fn forget(&self) {
        self.tell(Message::Forget);
    }

    /// Work left behind is taken up in this window: its old copy goes once the new one stands.
    pub fn adopt(&self, left: Left) {
        self.tell(Message::Adopt(Box::new(left)));
    }

    /// Waits until all that was told so far is written, as late as it would be.
    pub fn settle(&self) {
        let (answer, settled) = channel();
        self.tell(Message::Settle(answer));
        // a thread that went answers nothing, and has nothing left to write
        let _ = settled.recv();
    }

    /// Why the last copy could not be written, told once.
    pub fn trouble(&self) -> Option<String> {
        let mut trouble = self.trouble.lock().unwrap_or_else(PoisonError::into_inner);
        trouble.take()
    }

    fn tell(&self, message: Message) {
        if let Some(sender) = &self.sender {
            // a thread that could not be started leaves nobody to tell
            let _ = sender.send(message);
        }
    }
}

impl Drop for Copies {
    fn drop(&mut self) {
        self.sender = None;
        if let Some(thread) = self.thread.take() {
            // a panic there has said what it had to say
            let _ = thread.join();
        }
    }
}

fn run(slot: &mut Slot, inbox: &Receiver<Message>, delay: Duration, failed: &dyn Fn(String)) {
    let mut waiting: Option<(Instant, Work)> = None;
    let mut to_answer: Vec<Sender<()>> = Vec::new();
    // a disk that stays full is told of once
    let mut well = true;
    loop {
        let message = match &waiting {
            None => inbox.recv().map_err(|_| RecvTimeoutError::Disconnected),
            Some((due, _)) => inbox.recv_timeout(due.saturating_duration_since(Instant::now())),
        };
        match message {
            Ok(Message::Keep(work)) => {
                let due = waiting.map_or_else(|| Instant::now() + delay, |(due, _)| due);
                waiting = Some((due, work));
            }
            Ok(Message::Forget) => {
                waiting = None;
                slot.remove();
            }
            Ok(Message::Adopt(left)) => slot.adopted.push(*left),
            Ok(Message::Settle(answer)) => to_answer.push(answer),
            Err(ended) => {
                if let Some((_, work)) = waiting.take() {
                    let written = slot.write(&work);
                    if let (Err(err), true) = (&written, well) {
                        failed(format!(
                            "No copy of your unsaved work could be kept ({err}); save it yourself"
                        ));
                    }
                    well = written.is_ok();
                }
                if ended == RecvTimeoutError::Disconnected {
                    return;
                }
            }
        }
        if waiting.is_none() {
            // who asked may have gone meanwhile
            for answer in to_answer.drain(..) {
                let _ = answer.send(());
            }
        }
    }
}

/// Where one window's copy is.
struct Slot {
    folder: PathBuf,
    /// Made with the first copy: the copy's path and its lock.
    held: Option<(PathBuf, Lock)>,
    /// Copies whose work is taken up here.
    adopted: Vec<Left>,
}

impl Slot {
    fn write(&mut self, work: &Work) -> Result<(), FileError> {
        let text = copy_text(work)?;
        let path = match &self.held {
            Some((path, _)) => path.clone(),
            None => self.take_name()?,
        };
        write_atomically(&path, text.as_bytes())?;
        self.adopted.drain(..).for_each(Left::throw_away);
        Ok(())
    }

    /// A name that no other window has, locked before there is a copy of that name.
    fn take_name(&mut self) -> Result<PathBuf, FileError> {
        let system = |source| FileError::System {
            path: self.folder.clone(),
            deed: crate::files::Deed::Saved,
            source,
        };
        fs::create_dir_all(&self.folder).map_err(system)?;
        let ending = format!(".{LOCK}");
        let made = tempfile::Builder::new()
            .prefix("work-")
            .suffix(&ending)
            .tempfile_in(&self.folder)
            .map_err(system)?;
        let (file, path) = made.keep().map_err(|err| system(err.error))?;
        // where files cannot be locked the copy is kept all the same
        let _ = file.try_lock();
        let copy = path.with_extension(COPY);
        let lock = Lock { path, _file: file };
        self.held = Some((copy.clone(), lock));
        Ok(copy)
    }

    fn remove(&mut self) {
        if let Some((copy, _)) = &self.held {
            // one that was never written is gone already
            let _ = fs::remove_file(copy);
        }
        self.held = None;
        self.adopted.drain(..).for_each(Left::throw_away);
    }
}

/// A lock that is held; its file goes with it unless a copy still needs it.
#[derive(Debug)]
struct Lock {
    path: PathBuf,
    _file: File,
}

impl Drop for Lock {
    fn drop(&mut self) {
        if !self.path.with_extension(COPY).exists() {
            // a lock file left over does no harm
            let _ = fs::remove_file(&self.path);
        }
    }
}

fn copy_text(work: &Work) -> Result<String, FileError> {
    let file = work.file.as_ref();
    let origin = Origin {
        file: file.and_then(|(path, _)| path.to_str().map(str::to_owned)),
        mark: file.map(|(_, stamp)| stamp.mark()),
    };
    let head = serde_json::to_string(&origin).unwrap_or_default();
    let text =
        format::write_with(&work.design, &work.comments).map_err(|source| FileError::Write {
            path: PathBuf::from("the copy"),
            source,
        })?;
    Ok(format!("{HEAD}{head}\n{text}"))
}

/// Work that was left behind by a program that did not end as it should.
///
/// While it is held no other window offers it.
#[derive(Debug)]
pub struct Left {
    copy: PathBuf,
    design: Design,
    comments: Comments,
    origin: Origin,
    /// When the copy was written.
    written: SystemTime,
    _lock: Lock,
}

impl Left {
    /// What was being worked on, and when: "Work on … from … was not saved."
    pub fn sentence(&self, now: SystemTime) -> String {
        let title = match self.design.title.trim() {
            "" => "Untitled box",
            title => title,
        };
        let file = self.file().and_then(Path::file_name).map_or_else(
            || "in no file yet".to_owned(),
            |name| name.to_string_lossy().into_owned(),
        );
        let ago = ago(now.duration_since(self.written).unwrap_or_default());
        format!("Work on “{title}” ({file}) from {ago} was not saved.")
    }

    /// The file that it belongs to.
    pub fn file(&self) -> Option<&Path> {
        self.origin.file.as_deref().map(Path::new)
    }

    /// The work as it was, not saved, with the file that it belongs to.
    ///
    /// Undo leads back to what that file has. A file that was changed since is asked about before it
    /// is saved over, as always.
    pub fn session(&self) -> Session {
        let file = self.file().map(|path| {
            let (len, content) = self.origin.mark.unwrap_or_default();
            (path.to_owned(), Stamp::of_mark(len, content))
        });
        Session::taken_up(self.design.clone(), file).with_comments(self.comments.clone())
    }

    /// It is not wanted any more.
    pub fn throw_away(self) {
        // what cannot be removed is offered again
        let _ = fs::remove_file(&self.copy);
    }
}

/// How long ago, in the words of a person.
fn ago(since: Duration) -> String {
    let seconds = since.as_secs();
    let (count, word) = match seconds {
        0..60 => return "less than a minute ago".to_owned(),
        60..3600 => (seconds / 60, "minute"),
        3600..86_400 => (seconds / 3600, "hour"),
        _ => (seconds / 86_400, "day"),
    };
    let plural = if count == 1 { "" } else { "s" };
    format!("{count} {word}{plural} ago")
}

/// Work that was left behind in `folder`, the newest first; that of windows still open is not.
pub fn left_behind(folder: &Path) -> Vec<Left> {
    let Ok(entries) = fs::read_dir(folder) else {
        return Vec::new();
    };
    let ending = format!(".{COPY}");
    let mut left: Vec<Left> = entries
        .filter_map(|entry| Some(entry.ok()?.path()))
        .filter(|path| path.to_string_lossy().ends_with(&ending))
        .filter_map(|copy| hold(&copy))
        .collect();
    left.sort_by(|one, other| (other.written, &other.copy).cmp(&(one.written, &one.copy)));
    left
}

/// Takes the lock of a copy and reads it; `None` where a window has it, or it is no design.
fn hold(copy: &Path) -> Option<Left> {
    let path = copy.with_extension("").with_extension(LOCK);
    let file = OpenOptions::new()
        .create(true)
        .truncate(false)
        .write(true)
        .open(&path)
        .ok()?;
    file.try_lock().ok()?;
    let lock = Lock { path, _file: file };
    // only now it is certain that nobody is writing it or has just thrown it away
    let written = fs::metadata(copy).and_then(|about| about.modified()).ok()?;
    let bytes = read_bounded(copy).ok()?;
    let (origin, design) = parted(&bytes);
    let loaded = format::read(design).ok()?;
    Some(Left {
        origin,
        copy: copy.to_owned(),
        design: loaded.design,
        comments: loaded.comments,
        written,
        _lock: lock,
    })
}

/// Which file a copy belongs to, and the bytes of its design: the first line is no comment of the
/// maker's and stays out of the work.
fn parted(bytes: &[u8]) -> (Origin, &[u8]) {
    let end = bytes.iter().position(|byte| *byte == b'\n');
    let (line, design) = bytes.split_at(end.map_or(bytes.len(), |end| end + 1));
    let head = str::from_utf8(line)
        .ok()
        .and_then(|line| line.strip_prefix(HEAD));
    match head {
        Some(head) => (serde_json::from_str(head).unwrap_or_default(), design),
        None => (Origin::default(), bytes),
    }
}
