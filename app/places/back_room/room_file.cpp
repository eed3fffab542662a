// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/back_room/room_file.h"

#include "db/disk/file_probe.h"

#include <system_error>

namespace holdfast::app {

namespace {

constexpr int kRemarksShown = 20;

} // namespace

Result<RoomFile> readRoomFile(db::Shop& shop) {
    auto read = shop.read([](db::Connection& connection) {
        RoomFile file;
        file.isTheWorkshop = db::isTheWorkshop(connection);
        for (const db::Seat& seat : db::seats(connection)) {
            if (seat.isHere)
                file.here = seat;
            else if (seat.isInUse)
                file.others.push_back(
                    {seat, file.isTheWorkshop ? db::entriesToFetch(connection, seat.number) : 0});
        }
        file.entriesToBring = db::entriesToBring(connection);
        file.orderNumbersLeft = db::orderNumbersLeft(connection);
        file.setAside = db::setAside(connection);
        file.remarks = db::recentRemarks(connection, kRemarksShown);
        return file;
    });
    if (!read.ok())
        return read;
    read->path = shop.path();
    std::error_code none;
    if (const auto bytes = std::filesystem::file_size(read->path, none); !none)
        read->bytes = bytes;
    read->isReadByOthers = db::isReadByOthers(read->path);
    read->lastBackup = keptBackup(shop);
    read->printers.choice = keptPrinters();
    read->loudness = keptLoudness();
    read->scannerPrefix = scannerPrefix();
    read->textPercent = textSize();
    return read;
}

} // namespace holdfast::app
