import SwiftUI
import UIKit

/// The system's share sheet: AirDrop, Files, mail. The app itself uses no network.
struct ShareSheet: UIViewControllerRepresentable {
    /// A file's URL, or a text.
    let item: Any
    /// Called with whether it was passed on.
    let ended: @MainActor (Bool) -> Void

    func makeUIViewController(context: Context) -> UIActivityViewController {
        let sheet = UIActivityViewController(activityItems: [item], applicationActivities: nil)
        sheet.completionWithItemsHandler = { _, done, _, _ in ended(done) }
        return sheet
    }

    func updateUIViewController(_ controller: UIActivityViewController, context: Context) {}
}
