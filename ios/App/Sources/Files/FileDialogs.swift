import RestwaterKit
import SwiftUI
import UniformTypeIdentifiers

extension UTType {
    /// Our op file: a JSON text sequence (RFC 7464), declared in the app's Info.plist.
    static let opFile = UTType(exportedAs: "app.restwater.op-file", conformingTo: .data)
}

extension View {
    /// The system's own pickers and share sheet, when the state asks for them.
    func fileDialogs(of state: RestwaterState) -> some View { modifier(FileDialogs(state: state)) }
}

private struct FileDialogs: ViewModifier {
    @ObservedObject var state: RestwaterState

    func body(content: Content) -> some View {
        content
            .fileImporter(isPresented: picks, allowedContentTypes: picksFolder ? [.folder] : [.opFile, .data]) { picked in
                switch picked {
                case .success(let url): state.dialogPicked(url)
                case .failure(let error): state.dialogFailed(error)
                }
            }
            .fileMover(isPresented: saves, file: saved) { moved in
                switch moved {
                case .success: state.dialogSaved()
                case .failure(let error): state.dialogFailed(error)
                }
            }
            .sheet(isPresented: shares) {
                if let item = shared {
                    ShareSheet(item: item) { done in
                        if done { state.dialogSaved() } else { state.dialogCancelled() }
                    }
                }
            }
    }

    // Refers to the dialog being answered: its purpose must not change while it leaves the screen.
    private var picksFolder: Bool { state.content.files.answering == .folder }
    private var picks: Binding<Bool> { shown { $0 == .pick || $0 == .folder } }
    private var saves: Binding<Bool> { shown { if case .save = $0 { true } else { false } } }
    private var shares: Binding<Bool> {
        shown {
            switch $0 {
            case .share, .text: true
            case .pick, .folder, .save: false
            }
        }
    }

    private var shared: Any? {
        switch state.content.files.dialog {
        case .share(let file): URL(fileURLWithPath: file.path)
        case .text(let text): text
        case .pick, .folder, .save, nil: nil
        }
    }

    private var saved: URL? {
        if case .save(let file) = state.content.files.answering { URL(fileURLWithPath: file.path) } else { nil }
    }

    private func shown(_ which: @escaping @MainActor @Sendable (FileDialog) -> Bool) -> Binding<Bool> {
        Binding { @MainActor in
            state.content.files.dialog.map(which) ?? false
        } set: { @MainActor shown in
            // The answer is still to come: the system closes its dialog first.
            if !shown, let dialog = state.content.files.dialog, which(dialog) { state.dialogClosed() }
        }
    }
}
