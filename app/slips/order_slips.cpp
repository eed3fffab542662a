// SPDX-License-Identifier: GPL-3.0-or-later
// What is changed of an order as a whole: its promise, its note, whether it is made at all.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "app/widgets/long_field.h"
#include "core/shop/promise_again.h"
#include "db/actions/order_actions.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class MovePromiseSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(MovePromiseSlip)

public:
    MovePromiseSlip(ShopDesk& shopDesk, const OrderInView& inView, QWidget* parent)
        : FormSlip(shopDesk, tr("Move the promise"), orderWords(inView), parent)
        , m_order(inView.order)
        , m_settings(inView.settings) {
        form().note(tr("Promised now: %1.").arg(promise(m_order.promised, desk().now().today())));
        reckonSoonest();
        form().pair();
        form().line("day", tr("Day"), date(dateOf(m_order.promised)));
        form().line("time", tr("Ready from"), clock(m_order.promised));
        m_words = form().note({});
        QObject::connect(&form(), &Form::edited, this, [this] { showWords(); });
        form().alsoNamed("promised", "day");
        showWords();
        beginAt("day");
        setAction(tr("Change the promise"));
    }

protected:
    void act() override {
        const LocalDate date = form().date("day", desk().now().today());
        const Minutes time = form().clock("time");
        if (form().isSound())
            settle(db::movePromise(desk().file(), m_order.id, LocalTime{date} + time, desk().now()));
    }

private:
    // What can be kept along with every other promise.
    void reckonSoonest() {
        const auto& shop = desk().shop();
        if (!shop->facts.orders.find(m_order.id))
            return;
        const Result<Promise> soonest = promiseAgain(*shop, m_order.id);
        if (!soonest.ok()) {
            form().note(words(soonest.error().message));
            return;
        }
        m_soonest = soonest->readyAt;
        m_why = words(soonest->why);
        QStringList path;
        for (const PromiseStep& step : soonest->path)
            path.append(tr("%1 %2").arg(words(step.words), words(step.when)));
        const QString ready = promise(*m_soonest, desk().now().today());
        form().note(path.isEmpty() ? tr("Can be kept from %1.").arg(ready)
                                   : tr("Can be kept from %1: %2.").arg(ready, path.join(tr(", "))));
    }

    void showWords() {
        m_words->setInk(&Tokens::ink2);
        const auto date = readDate(form().text("day"), {}, desk().now().today());
        const auto time = readClock(form().text("time"), {});
        if (!date.ok() || !time.ok())
            return m_words->setText(tr("A day such as tomorrow, 25/11 or %1; a time such as 15:00.")
                                        .arg(app::date(desk().now().today())));
        const auto hours = m_settings.hoursOn(*date);
        const QString spoken = promise(LocalTime{*date} + *time, desk().now().today());
        if (!hours)
            m_words->setText(tr("%1. The shop is closed that day.").arg(spoken));
        else if (*time >= hours->closes)
            m_words->setText(tr("%1, after the shop has closed.").arg(spoken));
        else if (m_soonest && LocalTime{*date} + *time < *m_soonest) {
            m_words->setInk(&Tokens::madder);
            m_words->setText(
                tr("%1 is too soon to keep along with the other promises. %2").arg(spoken, m_why));
        } else
            m_words->setText(tr("%1. Tell the customer.").arg(spoken));
    }

    Order m_order;
    ShopSettings m_settings;
    std::optional<LocalTime> m_soonest;
    QString m_why; // so soon and no sooner
    Label* m_words = nullptr;
};

class OrderNoteSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(OrderNoteSlip)

public:
    OrderNoteSlip(ShopDesk& shopDesk, const OrderInView& inView, QWidget* parent)
        : FormSlip(shopDesk, tr("Note"), orderWords(inView), parent)
        , m_order(inView.order.id)
        , m_before(words(inView.order.note)) {
        form()
            .longLine("note", tr("To remember"), m_before)
            ->setPlaceholder(tr("a gift, wrap it; leave it with the neighbour"));
        form().optional("note");
        form().note(tr("Shown with the order, and at the hand-over."));
        beginAt("note");
        setAction(tr("Save the note"));
    }

protected:
    void act() override {
        if (form().text("note") == m_before)
            return finish(); // nothing to write down
        settle(db::changeNote(desk().file(), m_order, plain(form().text("note"))));
    }

private:
    OrderId m_order;
    QString m_before;
};

class CancelOrderSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(CancelOrderSlip)

public:
    CancelOrderSlip(ShopDesk& shopDesk, const OrderInView& inView, QWidget* parent)
        : FormSlip(shopDesk, tr("Cancel the order"), orderWords(inView), parent)
        , m_order(inView.order.id) {
        askWhat(inView);
        form().note(tr("Its %n garment is not made. A blank reserved for it goes back to the rail.|"
                       "Its %n garments are not made. Blanks reserved for them go back to the rail.",
                       nullptr, howMany(inView.garments.size())));
        if (inView.order.paid > Money{})
            form().note(tr("%1 was paid; pay it back under Money, if that is agreed.")
                            .arg(money(inView.order.paid, inView.settings.currency)));
        form().line("reason", tr("Reason"));
        beginAt("reason");
        setAction(tr("Cancel the order"));
    }

protected:
    void act() override {
        const std::string reason = plain(form().text("reason"));
        const std::size_t what = m_garments.empty() ? 0 : static_cast<std::size_t>(form().chosen("what"));
        if (what == 0)
            settle(db::cancelOrder(desk().file(), m_order, reason));
        else
            settle(db::cancelGarment(desk().file(), m_garments.at(what - 1), reason, desk().now()));
    }

private:
    // All of it, or one garment of those that are still here.
    void askWhat(const OrderInView& inView) {
        QVector<PickItem> items{{tr("The whole order")}};
        for (const Garment& garment : inView.garments)
            if (!garment.handedOverAt) {
                items.append({garmentWords(desk().shop()->facts, garment)});
                m_garments.push_back(garment.id);
            }
        if (inView.garments.size() < 2) {
            m_garments.clear();
            return;
        }
        form().list("what", tr("What is cancelled"), items, 0);
    }

    OrderId m_order;
    std::vector<GarmentId> m_garments; // that can be cancelled alone
};

} // namespace

Slip* makeMovePromise(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto inView = orderIn(desk, matter);
    return inView ? new MovePromiseSlip(desk, *inView, parent) : nullptr;
}

Slip* makeOrderNote(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto inView = orderIn(desk, matter);
    return inView ? new OrderNoteSlip(desk, *inView, parent) : nullptr;
}

Slip* makeCancelOrder(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto inView = orderIn(desk, matter);
    return inView ? new CancelOrderSlip(desk, *inView, parent) : nullptr;
}

} // namespace holdfast::app
