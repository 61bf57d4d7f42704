import RestwaterKit
import SwiftUI
import UniformTypeIdentifiers

extension UTType {
    /// Our op file: a JSON text sequence (RFC 7464), declared in project.yml.
    static let opFile = UTType(exportedAs: "app.restwater.op-file", conformingTo: .data)
}

extension View {
    /// The system's own picker for a file to take in, and its share sheet for one that was made.
    func fileExchange(of state: RestwaterState) -> some View { modifier(FileExchange(state: state)) }
}

private struct FileExchange: ViewModifier {
    @ObservedObject var state: RestwaterState

    func body(content: Content) -> some View {
        content
            .fileImporter(isPresented: picking, allowedContentTypes: [.opFile, .data]) { picked in
                if case .success(let url) = picked { state.lookInto(url) }
            }
            .sheet(isPresented: sharing) {
                if let made = state.seen.files.made { ShareSheet(url: URL(filePath: made.path)) }
            }
    }

    private var picking: Binding<Bool> {
        Binding { state.seen.files.picking } set: { shown in if !shown { state.picked() } }
    }

    private var sharing: Binding<Bool> {
        Binding { state.seen.files.made != nil } set: { shown in if !shown { state.shared() } }
    }
}
