// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Every kind of thing that a person does in a shop, once, each ready to be done in a copy of the same
// prepared shop: for the tests of disks that fail and of programs that are killed.

#include "core/orders/order_file.h"
#include "core/quality/claim.h"
#include "tests/db/exchange_fixture.h"

#include <functional>
#include <string>
#include <vector>

namespace holdfast::db {

class EveryAction : public Laptops {
protected:
    struct Doing {
        std::string name;
        std::function<Result<Done>(Shop&)> act; // on a copy of the prepared shop
    };

    EveryAction();

    // Each succeeds in a copy of the prepared shop, and changes it.
    std::vector<Doing> everyAction() const;

private:
    void prepareOrders();
    void prepareStock();

    OrderFileRead ofAWebShop() const;
    std::vector<Doing> onBlanks() const;
    std::vector<Doing> onStock() const;
    std::vector<Doing> onFilm() const;
    std::vector<Doing> onReadings() const;
    std::vector<Doing> onOrders() const;
    std::vector<Doing> onInvoices() const;
    std::vector<Doing> onDecals() const;
    std::vector<Doing> atThePress() const;
    std::vector<Doing> aroundTheShop() const;
    std::vector<Doing> onHistory() const;

    LocalTime later() const { return inDays(5); }

    struct Prepared {
        OrderTaken open, quotation, worded, finished, collected, ready, begun, undone;
        GarmentId openGarment, wordedGarment, finishedGarment, collectedGarment, readyGarment, begunGarment;
        DecalId openDecal, wordedDecal, upperDecal, finishedDecal, readyDecal;
        Route readyRoute, begunRoute;
        CustomerId customer;
        ClaimId claim;
        InvoiceId invoice;
        BlankStyleId hoodie;
        BlankLotId unwashed, clean;
        WashLoadId wet;
        FilmId otherFilm, unreadFilm;
        FairId fair;
        EntryId lastAct, lastUndo;
        Instant lastRead{};
    } m_at;
};

} // namespace holdfast::db
