import ActivityKit
import AppIntents
import SwiftUI
import WidgetKit

/// The running wait: digits that the system's clock updates, what they mean, and the most common keys.
struct WaitActivity: Widget {
    var body: some WidgetConfiguration {
        if #available(iOS 18.0, *) {
            // The small family is the Smart Stack of a paired watch.
            return configuration.supplementalActivityFamilies([.small])
        } else {
            return configuration
        }
    }

    private var configuration: some WidgetConfiguration {
        ActivityConfiguration(for: WaitAttributes.self) { context in
            if #available(iOS 18.0, *) {
                WaitBySize(wait: context.state)
            } else {
                WaitOnLockScreen(wait: context.state)
            }
        } dynamicIsland: { context in
            DynamicIsland {
                DynamicIslandExpandedRegion(.leading) { Text(verbatim: context.state.title) }
                DynamicIslandExpandedRegion(.trailing) { WaitDigits(since: context.state.since) }
                DynamicIslandExpandedRegion(.bottom) { WaitKeys(keys: context.state.keys) }
            } compactLeading: {
                WaitDigits(since: context.state.since, width: 52)
            } compactTrailing: {
                EmptyView()
            } minimal: {
                WaitDigits(since: context.state.since, width: 44)
            }
        }
    }
}

/// The lock screen's view on the phone, a shorter one on a watch.
@available(iOS 18.0, *)
struct WaitBySize: View {
    let wait: WaitAttributes.ContentState
    @Environment(\.activityFamily) private var family

    var body: some View {
        if family == .small {
            VStack(alignment: .leading) {
                WaitDigits(since: wait.since).font(.headline)
                Text(verbatim: wait.title)
            }
        } else {
            WaitOnLockScreen(wait: wait)
        }
    }
}

/// What is out and since when, what the record says about it, and the keys. The system cuts off what is higher than 160 points, so
/// the words give way and the keys don't.
struct WaitOnLockScreen: View {
    let wait: WaitAttributes.ContentState
    @Environment(\.dynamicTypeSize) private var letters

    var body: some View {
        VStack(alignment: .leading, spacing: 6) {
            HStack(alignment: .firstTextBaseline) {
                // Digits of that size can be read with any letters; large letters need the room.
                WaitDigits(since: wait.since).font(.system(size: letters.isAccessibilitySize ? 30 : 44, weight: .bold).monospacedDigit())
                Text(verbatim: wait.title).font(.headline).lineLimit(1).minimumScaleFactor(0.6)
            }
            Text(verbatim: wait.text).lineLimit(2).minimumScaleFactor(0.6)
            WaitKeys(keys: wait.keys).layoutPriority(1)
        }
        .padding()
    }
}

/// The keys, as wide as the screen allows. The system accepts taps on them only while the phone is unlocked.
struct WaitKeys: View {
    let keys: [WaitAttributes.Key]

    var body: some View {
        HStack(spacing: 8) {
            ForEach(keys) { key in
                Button(intent: LockScreenKey(key: key.id, rod: key.rod)) {
                    // WaitWidthTests holds that three fit whole in each language.
                    Text(verbatim: key.label).font(.headline).lineLimit(1).minimumScaleFactor(0.6)
                }
            }
        }
        .dynamicTypeSize(...DynamicTypeSize.xxxLarge)
    }
}

/// Minutes and seconds since the splash.
struct WaitDigits: View {
    let since: Date?
    /// Set in the island: a timer takes the width of its longest text and would stretch the island across the screen.
    var width: CGFloat?

    var body: some View {
        if let since {
            Text(timerInterval: since...since.addingTimeInterval(24 * 3_600), countsDown: false)
                .monospacedDigit()
                .multilineTextAlignment(width == nil ? .leading : .trailing)
                .frame(maxWidth: width)
        }
    }
}
