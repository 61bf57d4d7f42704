import ActivityKit
import SwiftUI
import WidgetKit

/// The running wait: digits that tick by the system's clock, what they mean, and where the cast lies.
struct WaitActivity: Widget {
    var body: some WidgetConfiguration {
        ActivityConfiguration(for: WaitAttributes.self) { context in
            WaitsOnLockScreen(waits: context.state.waits)
        } dynamicIsland: { context in
            let first = context.state.waits.first
            return DynamicIsland {
                DynamicIslandExpandedRegion(.leading) { Text(verbatim: first?.name ?? "") }
                DynamicIslandExpandedRegion(.trailing) { WaitDigits(since: first?.since) }
                DynamicIslandExpandedRegion(.bottom) { Text(verbatim: first?.headline ?? "") }
            } compactLeading: {
                Text(verbatim: first?.name ?? "")
            } compactTrailing: {
                WaitDigits(since: first?.since)
            } minimal: {
                WaitDigits(since: first?.since)
            }
        }
    }
}

/// Each rod that is out, in the order of the rods.
struct WaitsOnLockScreen: View {
    let waits: [WaitAttributes.Wait]

    var body: some View {
        VStack(alignment: .leading, spacing: 6) {
            ForEach(waits) { wait in
                HStack(alignment: .firstTextBaseline) {
                    WaitDigits(since: wait.since).font(.system(size: 44, weight: .bold).monospacedDigit())
                    VStack(alignment: .leading) {
                        Text(verbatim: wait.name)
                        Text(verbatim: wait.sinceText)
                    }
                    .font(.headline)
                }
                if !wait.headline.isEmpty { Text(verbatim: wait.headline).font(.headline) }
                if !wait.spot.isEmpty { Text(verbatim: wait.spot) }
            }
        }
        .padding()
    }
}

/// Minutes and seconds since the splash.
struct WaitDigits: View {
    let since: Date?

    var body: some View {
        if let since {
            Text(timerInterval: since...since.addingTimeInterval(24 * 3_600), countsDown: false).monospacedDigit()
        }
    }
}
