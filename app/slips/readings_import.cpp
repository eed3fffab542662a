// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/readings_import.h"

#include <utility>

namespace holdfast::app {

namespace {

constexpr double kTold = 0.01; // a hundred tellings are enough

} // namespace

struct ReadingsImport::Outcome {
    Result<db::ReadingsImported> imported;
    WrittenBeside written;
};

ReadingsImport::ReadingsImport(ShopDesk& desk, QObject* parent)
    : QObject(parent)
    , m_desk(desk) {}

ReadingsImport::~ReadingsImport() {
    m_shouldStop = true;
    if (m_thread.joinable())
        m_thread.join();
}

void ReadingsImport::begin(ChosenPlace place, ClimateSeries readings) {
    if (m_isBusy)
        return;
    m_isBusy = true;
    m_shouldStop = false;
    m_thread =
        std::thread([this, place = std::move(place), readings = std::move(readings), known = m_desk.known()] {
            auto outcome = std::make_shared<Outcome>(importedBeside(place, readings, known));
            QMetaObject::invokeMethod(
                this, [this, outcome] { end(*outcome); }, Qt::QueuedConnection);
        });
}

ReadingsImport::Outcome ReadingsImport::importedBeside(const ChosenPlace& place,
                                                       const ClimateSeries& readings,
                                                       const KnownBefore& known) {
    const auto beside = ShopBeside::open(m_desk.file(), known);
    if (!beside.ok())
        return {beside.error(), {}};
    double told = 0;
    const auto progress = [&](double share) {
        if (share - told >= kTold) {
            told = share;
            QMetaObject::invokeMethod(
                this, [this, share] { emit progressed(share); }, Qt::QueuedConnection);
        }
        return !m_shouldStop;
    };
    db::Shop& file = (*beside)->file();
    auto imported = file.asOne([&]() -> Result<db::ReadingsImported> {
        const auto stored = place.in(file);
        return stored.ok() ? db::importReadings(file, *stored, readings, progress) : stored.error();
    });
    return {std::move(imported), (*beside)->written()};
}

void ReadingsImport::end(Outcome& outcome) {
    m_thread.join();
    m_isBusy = false;
    if (outcome.imported.ok())
        m_desk.takeOver(std::move(outcome.written));
    emit ended(outcome.imported);
}

} // namespace holdfast::app
