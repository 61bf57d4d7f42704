import AppIntents
import SwiftUI
import WidgetKit

/// A control for Control Center, the corners of the lock screen and the action button: CAST, BITE or LANDED, whichever
/// is due next.
@available(iOS 18.0, *)
struct NextKeyControl: ControlWidget {
    var body: some ControlWidgetConfiguration {
        StaticControlConfiguration(kind: "app.restwater.next-key") {
            ControlWidgetButton(action: NextKeyIntent()) {
                Label("Cast, bite or landed", systemImage: "hand.tap")
            }
        }
        .displayName("Cast, bite or landed")
    }
}
