import SwiftUI

/// The app: one window over the one core of the process.
@main
struct RestwaterMain: App {
    @UIApplicationDelegateAdaptor(Delegate.self) private var delegate

    var body: some Scene {
        WindowGroup { RootView(phone: Phone.shared, opening: Phone.shared.opening) }
    }
}
