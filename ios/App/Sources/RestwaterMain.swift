import SwiftUI

/// The app: one window over the one session of the process.
@main
struct RestwaterMain: App {
    @UIApplicationDelegateAdaptor(Delegate.self) private var delegate
    private let phone: Phone

    /// The session is there before any intent runs: the system may start the process for one, without a window.
    init() { phone = Phone.shared }

    var body: some Scene {
        WindowGroup { RootView(phone: phone, opening: phone.session.opening) }
    }
}
