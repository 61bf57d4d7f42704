import Foundation

/// The system's dialogs for files. It closes a dialog (`isPresented` turns false) before it reports what was chosen
/// (`onCompletion`), and reports nothing if the angler cancelled
/// (developer.apple.com/documentation/swiftui/view/fileimporter(ispresented:allowedcontenttypes:oncompletion:)). So the
/// dialog that an answer belongs to is remembered until the answer or the next dialog comes.
extension RestwaterState {
    func show(_ dialog: FileDialog) {
        content.files.dialog = dialog
        content.files.answering = dialog
        unfinished.isMarked = dialog.isOfFile
    }

    /// The dialog has closed; its answer may still come, but none does if the angler cancelled.
    public func dialogClosed() {
        content.files.dialog = nil
        unfinished.isMarked = false
    }

    /// The angler chose nothing.
    public func dialogCancelled() {
        content.files.dialog = nil
        content.files.answering = nil
        unfinished.isMarked = false
    }

    /// The angler chose a file to import, or a folder for copies of backups.
    public func dialogPicked(_ url: URL) {
        let answering = content.files.answering
        dialogCancelled()
        if answering == .folder { copyBackups(to: url) } else { offer(url) }
    }

    /// The file was passed on or saved.
    public func dialogSaved() {
        let answering = content.files.answering
        dialogCancelled()
        switch answering {
        case .share(let file), .save(let file): said(file.says)
        case .text, .pick, .folder, nil: break
        }
    }

    /// The system could not do it.
    public func dialogFailed(_ error: any Error) {
        dialogCancelled()
        refused(FileTrouble.refusal(of: error))
    }
}
