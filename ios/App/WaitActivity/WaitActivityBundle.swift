import SwiftUI
import WidgetKit

/// The widget that draws the running wait on the lock screen and in the island.
@main
struct WaitActivityBundle: WidgetBundle {
    var body: some Widget { WaitActivity() }
}
