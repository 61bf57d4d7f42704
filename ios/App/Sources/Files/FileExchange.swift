import RestwaterKit
import SwiftUI
import UniformTypeIdentifiers

extension UTType {
    /// Our op file: a JSON text sequence (RFC 7464), declared in project.yml.
    static let opFile = UTType(exportedAs: "app.restwater.op-file", conformingTo: .data)
}

extension View {
    /// The system's own pickers and share sheet, as the state wants them.
    func fileExchange(of state: RestwaterState) -> some View { modifier(FileExchange(state: state)) }
}

private struct FileExchange: ViewModifier {
    @ObservedObject var state: RestwaterState

    func body(content: Content) -> some View {
        content
            .fileImporter(isPresented: picks, allowedContentTypes: picksFolder ? [.folder] : [.opFile, .data]) { picked in
                switch picked {
                case .success(let url): if picksFolder { state.copyBackups(to: url) } else { state.offer(url) }
                case .failure(let error): state.wantFailed(error)
                }
            }
            .fileMover(isPresented: saves, file: saved) { moved in
                switch moved {
                case .success: state.wantMet(saved: true)
                case .failure(let error): state.wantFailed(error)
                }
            }
            .sheet(isPresented: shares) {
                if case .share(let file) = state.seen.files.wanted {
                    ShareSheet(url: URL(fileURLWithPath: file.path)) { done in state.wantMet(saved: done) }
                }
            }
    }

    private var picksFolder: Bool { state.seen.files.wanted == .folder }
    private var picks: Binding<Bool> { shown { $0 == .pick || $0 == .folder } }
    private var saves: Binding<Bool> { shown { if case .save = $0 { true } else { false } } }
    private var shares: Binding<Bool> { shown { if case .share = $0 { true } else { false } } }

    private var saved: URL? {
        if case .save(let file) = state.seen.files.wanted { URL(fileURLWithPath: file.path) } else { nil }
    }

    private func shown(_ which: @escaping @MainActor @Sendable (FilesWant) -> Bool) -> Binding<Bool> {
        Binding { @MainActor in state.seen.files.wanted.map(which) ?? false } set: { @MainActor shown in
            if !shown, let wanted = state.seen.files.wanted, which(wanted) { state.wantMet() }
        }
    }
}
