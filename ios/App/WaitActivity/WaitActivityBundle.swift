import SwiftUI
import WidgetKit

/// The running wait on the lock screen and in the island, and the control.
@main
struct WaitActivityBundle: WidgetBundle {
    var body: some Widget {
        WaitActivity()
        if #available(iOS 18.0, *) { NextKeyControl() }
    }
}
