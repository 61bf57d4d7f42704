// Signatures only; each comment is the page under developer.apple.com/documentation that says so.
import ActivityKit
@_exported import Darwin
import AppIntents
import SwiftUI

// alarmkit/alarmmetadata
public protocol AlarmMetadata: Decodable, Encodable, Hashable, Sendable {}
// alarmkit/alarmbutton
public struct AlarmButton {}
// alarmkit/alarmpresentation
public struct AlarmPresentation {
    // alarmkit/alarmpresentation/alert
    public struct Alert {
        // alarmkit/alarmpresentation/alert-swift.struct/init(title:secondarybutton:secondarybuttonbehavior:), iOS 26.1
        public init(title: LocalizedStringResource, secondaryButton: AlarmButton? = nil, secondaryButtonBehavior: SecondaryButtonBehavior? = nil) {
            fatalError()
        }
        // alarmkit/alarmpresentation/alert/secondarybuttonbehavior
        public enum SecondaryButtonBehavior { case countdown, custom }
    }
    // alarmkit/alarmpresentation/countdown
    public struct Countdown {}
    // alarmkit/alarmpresentation/paused
    public struct Paused {}
    // alarmkit/alarmpresentation/init(alert:countdown:paused:)
    public init(alert: Alert, countdown: Countdown? = nil, paused: Paused? = nil) { fatalError() }
}
// alarmkit/alarmattributes
public struct AlarmAttributes<Metadata: AlarmMetadata> {
    public init(presentation: AlarmPresentation, metadata: Metadata? = nil, tintColor: Color) { fatalError() }
}
// alarmkit/alarm
public struct Alarm {
    // alarmkit/alarm/schedule
    public enum Schedule { case fixed(Date) }
    public var id: UUID { fatalError() }
    // alarmkit/alarm/state-swift.enum
    public enum State: Sendable { case scheduled, countdown, paused, alerting }
    // alarmkit/alarm/state-swift.property
    public var state: State { fatalError() }
}
// activitykit/alertconfiguration/alertsound
public struct AlertConfiguration { public struct AlertSound { public static var `default`: AlertSound { fatalError() } } }
// alarmkit/alarmmanager: a class of which the page says nothing of Sendable; its shared one is used where it is needed.
public class AlarmManager {
    // alarmkit/alarmmanager/authorizationstate-swift.enum
    public enum AuthorizationState { case notDetermined, denied, authorized }
    // alarmkit/alarmmanager/alarmconfiguration
    public struct AlarmConfiguration<Metadata: AlarmMetadata> {
        // alarmkit/alarmmanager/alarmconfiguration/alarm(schedule:attributes:stopintent:secondaryintent:sound:)
        public static func alarm(
            schedule: Alarm.Schedule? = nil, attributes: AlarmAttributes<Metadata>, stopIntent: (any LiveActivityIntent)? = nil,
            secondaryIntent: (any LiveActivityIntent)? = nil, sound: AlertConfiguration.AlertSound = .default
        ) -> AlarmManager.AlarmConfiguration<Metadata> { fatalError() }
    }
    // alarmkit/alarmmanager/shared
    public class var shared: AlarmManager { fatalError() }
    public var authorizationState: AuthorizationState { fatalError() }
    // alarmkit/alarmmanager/requestauthorization()
    public func requestAuthorization() async throws -> AuthorizationState { fatalError() }
    // alarmkit/alarmmanager/alarms
    public var alarms: [Alarm] { get throws { fatalError() } }
    // alarmkit/alarmmanager/schedule(id:configuration:)
    public func schedule<Metadata: AlarmMetadata>(id: UUID, configuration: AlarmConfiguration<Metadata>) async throws -> Alarm { fatalError() }
    // alarmkit/alarmmanager/cancel(id:)
    public func cancel(id: UUID) throws { fatalError() }
}
