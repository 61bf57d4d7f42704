#if DEBUG
import SwiftUI
import WidgetKit

/// The lock screen's view with the words of an invented cast.
struct WaitOnLockScreen_Previews: PreviewProvider {
    static var previews: some View {
        WaitOnLockScreen(
            wait: WaitAttributes.ContentState(
                title: "Rod 1", text: "…", since: Date().addingTimeInterval(-724),
                keys: [WaitAttributes.Key(id: "BITE", label: "BITE"), WaitAttributes.Key(id: "WOUND_IN", label: "WOUND IN")]
            )
        )
    }
}
#endif
