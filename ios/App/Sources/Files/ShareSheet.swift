import SwiftUI
import UIKit

/// The system's share sheet: AirDrop, Files, mail. The app itself reaches no network.
struct ShareSheet: UIViewControllerRepresentable {
    let url: URL
    /// Whether the file was handed on.
    let ended: @MainActor (Bool) -> Void

    func makeUIViewController(context: Context) -> UIActivityViewController {
        let sheet = UIActivityViewController(activityItems: [url], applicationActivities: nil)
        sheet.completionWithItemsHandler = { _, done, _, _ in ended(done) }
        return sheet
    }

    func updateUIViewController(_ controller: UIActivityViewController, context: Context) {}
}
