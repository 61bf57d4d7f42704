import RestwaterKit
import UIKit

/// Sets up what needs a window.
final class Delegate: NSObject, UIApplicationDelegate {
    func application(
        _ application: UIApplication, configurationForConnecting session: UISceneSession, options: UIScene.ConnectionOptions
    ) -> UISceneConfiguration {
        let configuration = UISceneConfiguration(name: nil, sessionRole: session.role)
        configuration.delegateClass = WindowDelegate.self
        return configuration
    }
}

/// Puts the counter of contacts on the window.
final class WindowDelegate: NSObject, UIWindowSceneDelegate {
    func sceneDidBecomeActive(_ scene: UIScene) {
        guard let window = (scene as? UIWindowScene)?.keyWindow else { return }
        if window.gestureRecognizers?.contains(where: { $0 is ContactCounter }) != true {
            window.addGestureRecognizer(ContactCounter(Phone.shared.session.contacts))
        }
    }
}
