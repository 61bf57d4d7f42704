import SwiftUI

/// The app: one window for the process's one session.
@main
struct RestwaterMain: App {
    @UIApplicationDelegateAdaptor(Delegate.self) private var delegate
    private let phone: Phone

    /// The session exists before any intent runs: the system may start the process for an intent, without a window.
    init() { phone = Phone.shared }

    var body: some Scene {
        WindowGroup { RootView(phone: phone, opening: phone.session.opening) }
    }
}
