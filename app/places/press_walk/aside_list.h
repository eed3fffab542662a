// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What cannot be pressed now: each garment with its reason and the act that frees it, on one card. The acts
// are painted, so that ten thousand cards cost no widget each; F and W do them for the card the keyboard is
// on.

#include "core/shop/reckoned_shop.h"
#include "core/shop/walk.h"

#include <QAbstractListModel>
#include <QListView>

#include <memory>
#include <vector>

namespace holdfast::app {

class AsideModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    void show(std::shared_ptr<const ReckonedShop> shop, const std::vector<AsideEntry>& entries);

    const AsideEntry& entry(int at) const { return m_entries[static_cast<std::size_t>(at)]; }
    const ReckonedShop& shop() const { return *m_shop; }
    const Garment& garment(int at) const { return m_shop->facts.garments.at(entry(at).garment); }
    // Words on the key that frees; empty where only time does.
    QString freeingWordsAt(int at) const;
    // A hold that a person may answer for; not one that leaves nothing to press, or nothing to press with.
    bool mayBeWaived(int at) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;

private:
    std::shared_ptr<const ReckonedShop> m_shop;
    std::vector<AsideEntry> m_entries;
};

class AsideDelegate;

class AsideList : public QListView {
    Q_OBJECT

public:
    explicit AsideList(QWidget* parent = nullptr);

    // Keeps the keyboard on the same garment where it is still here.
    void show(std::shared_ptr<const ReckonedShop> shop, const std::vector<AsideEntry>& entries);
    const AsideModel& aside() const { return m_model; }
    // Puts the keyboard on the card of that garment; false where it is nowhere here.
    bool turnTo(GarmentId garment);
    // The card the keys F and W act on; none when nothing is aside.
    const AsideEntry* current() const;

signals:
    void freed();  // the act of the current card is asked for
    void waived(); // the current card is to be let through

protected:
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    AsideModel m_model;
    AsideDelegate* m_delegate = nullptr;
};

} // namespace holdfast::app
