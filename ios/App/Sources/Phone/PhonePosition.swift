import CoreLocation
import Foundation
import RestwaterKit

/// The phone's satellite receiver: one reading when the angler asks for it, with the permission "while in use". Not run
/// by tests.
@MainActor
final class PhonePosition: NSObject, CLLocationManagerDelegate {
    private let manager = CLLocationManager()
    private var answer: (@MainActor (PositionRead) -> Void)?
    /// Until when it is asked again: the system gives up after some ten seconds, a cold receiver takes longer.
    private var until = Date.distantPast
    private static let longestS: TimeInterval = 45

    override init() {
        super.init()
        manager.delegate = self
        manager.desiredAccuracy = kCLLocationAccuracyNearestTenMeters
    }

    /// Asks for the permission if it was never asked for, then for one reading.
    func read(_ answer: @escaping @MainActor (PositionRead) -> Void) {
        self.answer = answer
        let ends = Date() + Self.longestS
        until = ends
        goOn(manager.authorizationStatus)
        // Nothing is reported if the app was left while the system asked for the permission.
        Task {
            do { try await Task.sleep(for: .seconds(Self.longestS)) } catch { return }
            if until == ends { end(.notFound) }
        }
    }

    private func goOn(_ status: CLAuthorizationStatus) {
        guard answer != nil else { return }
        switch status {
        case .notDetermined: manager.requestWhenInUseAuthorization()
        case .authorizedWhenInUse, .authorizedAlways: manager.requestLocation()
        default: end(.notAllowed)
        }
    }

    private func failed(_ refused: Bool) {
        guard !refused, Date() < until else { return end(refused ? .notAllowed : .notFound) }
        Task {
            do { try await Task.sleep(for: .seconds(1)) } catch { return }
            if answer != nil { manager.requestLocation() }
        }
    }

    private func end(_ read: PositionRead) {
        answer?(read)
        answer = nil
    }

    // The manager calls back on the thread it was created on: the main one.

    nonisolated func locationManagerDidChangeAuthorization(_ manager: CLLocationManager) {
        let status = manager.authorizationStatus
        MainActor.assumeIsolated { goOn(status) }
    }

    nonisolated func locationManager(_ manager: CLLocationManager, didUpdateLocations locations: [CLLocation]) {
        let at = locations.last.map {
            PositionRead.found(latDeg: $0.coordinate.latitude, lonDeg: $0.coordinate.longitude, accuracyM: $0.horizontalAccuracy)
        }
        MainActor.assumeIsolated { end(at ?? .notFound) }
    }

    nonisolated func locationManager(_ manager: CLLocationManager, didFailWithError error: any Error) {
        let refused = (error as? CLError)?.code == .denied
        MainActor.assumeIsolated { failed(refused) }
    }
}
