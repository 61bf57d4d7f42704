import Foundation
import RestwaterCore

/// The mark that a file is being made or passed on. The system may end the process meanwhile: the next one finds it and says so.
struct UnfinishedFile: @unchecked Sendable {
    // UserDefaults may be used from any thread, as in BackupFolder.
    let defaults: UserDefaults
    private static let mark = "unfinished-file"

    var isMarked: Bool {
        get { defaults.bool(forKey: Self.mark) }
        nonmutating set { if newValue { defaults.set(true, forKey: Self.mark) } else { defaults.removeObject(forKey: Self.mark) } }
    }
}

extension RestwaterState {
    /// Makes the file that the screen asks for, for a dialog of the system.
    func make(_ dialog: @escaping @MainActor @Sendable (Outgoing) -> FileDialog) {
        let begun = work({ core, at, work in try await core.send(now: at, work: work) }) { state, file in
            state.show(dialog(file))
        } ended: { state in
            state.unfinished.isMarked = state.content.files.answering?.isOfFile == true
        }
        guard begun else { return }
        // A dialog of before that was given up: no answer of it is to come.
        content.files.answering = nil
        unfinished.isMarked = true
    }

    /// An earlier process was ended before a file was saved or sent.
    func sayUnfinished() {
        guard running == nil, content.files.answering == nil, unfinished.isMarked else { return }
        unfinished.isMarked = false
        // After the screen has come up.
        ask({ core in try core.subject() }) { state, _ in state.say(shellWords(language: phoneLanguage()).fileUnfinished) }
    }
}
