#pragma once
// The films as a list that opens in the middle of the table: shade, whether it fits and why not, metres free
// and the roll it would be cut from. Arrows move, Enter chooses, Escape closes; nothing is chosen on the way.

#include "app/places/fair_table/film_offer.h"

#include <QAbstractListModel>
#include <QStyledItemDelegate>
#include <QWidget>

#include <memory>

class QListView;

namespace holdfast::app {

class KeyHint;

class FilmListModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    // The offers point into the shop.
    void show(std::vector<FilmOffer> offers, std::shared_ptr<const ReckonedShop> shop, bool knowsStyle);
    const FilmOffer& offer(int row) const { return m_offers[static_cast<std::size_t>(row)]; }
    int rowOf(FilmId film) const; // -1 for none
    bool knowsStyle() const { return m_knowsStyle; }

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override; // the whole line in words

private:
    std::vector<FilmOffer> m_offers;
    std::shared_ptr<const ReckonedShop> m_shop;
    bool m_knowsStyle = false;
};

// Words of one offer, as the list shows them.
QString fitnessWords(const FilmOffer& offer, bool knowsStyle);
QString rollWords(const FilmOffer& offer);

class FilmDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

class FilmList : public QWidget {
    Q_OBJECT

public:
    explicit FilmList(QWidget* parent = nullptr);

    void show(std::vector<FilmOffer> offers, std::shared_ptr<const ReckonedShop> shop, bool knowsStyle,
              FilmId chosen);
    // What Enter and Shift with Enter will do: "both decals", "only Heron".
    void setReach(const QString& whole, const QString& alone);
    void takeFocus();

    QSize sizeHint() const override { return {444, 268}; }
    QSize minimumSizeHint() const override { return {300, 0}; }

signals:
    void chosen(holdfast::FilmId film, bool isAlone);
    void closed();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void choose(bool isAlone);

    FilmListModel* m_model = nullptr;
    QListView* m_view = nullptr;
    KeyHint* m_enter = nullptr;
    KeyHint* m_shiftEnter = nullptr;
};

} // namespace holdfast::app
