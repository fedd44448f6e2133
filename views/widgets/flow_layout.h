// Lays widgets out in a row that breaks into further rows where the width ends.
#pragma once

#include <QLayout>
#include <QVector>

namespace rickyard::views {

class FlowLayout : public QLayout
{
    Q_OBJECT

public:
    explicit FlowLayout(QWidget *parent = nullptr);
    ~FlowLayout() override;

    // Distances in steps of the spacing scale; they follow the theme.
    void setSpacingSteps(int across, int down);

    void addItem(QLayoutItem *item) override;
    int count() const override { return static_cast<int>(items_.size()); }
    QLayoutItem *itemAt(int index) const override { return items_.value(index); }
    QLayoutItem *takeAt(int index) override;
    Qt::Orientations expandingDirections() const override { return {}; }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override { return minimumSize(); }
    QSize minimumSize() const override;
    void setGeometry(const QRect &rectangle) override;

private:
    int arrange(const QRect &rectangle, bool place) const;

    QVector<QLayoutItem *> items_;
    int across_ = 2;
    int down_ = 2;
};

} // namespace rickyard::views
