#include "app/slips/readings_import.h"

#include "db/tables/facts.h"

#include <utility>

namespace holdfast::app {

namespace {

constexpr double kTold = 0.01; // a hundred tellings are enough

} // namespace

struct ReadingsImport::Outcome {
    Result<db::ReadingsImported> imported;
    db::ChangedTables touched;
    std::shared_ptr<const ClimateSeries> readings; // of the place, as they stand now
};

ReadingsImport::ReadingsImport(ShopDesk& desk, QObject* parent)
    : QObject(parent)
    , m_desk(desk) {}

ReadingsImport::~ReadingsImport() {
    m_shouldStop = true;
    if (m_thread.joinable())
        m_thread.join();
}

void ReadingsImport::begin(PlaceId place, ClimateSeries readings) {
    if (m_isBusy)
        return;
    m_isBusy = true;
    m_shouldStop = false;
    m_thread = std::thread([this, place, readings = std::move(readings), now = m_desk.now().instant] {
        auto outcome = std::make_shared<Outcome>(importedBeside(place, readings, now));
        QMetaObject::invokeMethod(
            this, [this, outcome, place] { end(*outcome, place); }, Qt::QueuedConnection);
    });
}

ReadingsImport::Outcome ReadingsImport::importedBeside(PlaceId place, const ClimateSeries& readings,
                                                       Instant now) {
    auto beside = m_desk.file().openBeside([now] { return now; });
    if (!beside.ok())
        return {beside.error(), {}, {}};
    db::Shop& shop = **beside;
    db::ChangedTables touched;
    shop.onChanged([&touched](const db::ChangedTables& tables) { touched = tables; });
    double told = 0;
    auto imported = db::importReadings(shop, place, readings, [&](double share) {
        if (share - told >= kTold) {
            told = share;
            QMetaObject::invokeMethod(
                this, [this, share] { emit progressed(share); }, Qt::QueuedConnection);
        }
        return !m_shouldStop;
    });
    Outcome outcome{std::move(imported), std::move(touched), {}};
    auto series =
        shop.read([place](db::Connection& connection) { return db::loadClimateOf(connection, place); });
    if (series.ok())
        outcome.readings = *series;
    return outcome;
}

void ReadingsImport::end(const Outcome& outcome, PlaceId place) {
    m_thread.join();
    m_isBusy = false;
    if (outcome.imported.ok())
        m_desk.takeOver(outcome.touched, place, outcome.readings);
    emit ended(outcome.imported);
}

} // namespace holdfast::app
