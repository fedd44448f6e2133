// A true-up: what is counted in the rick against what the books say, before anything is written.
#pragma once

#include "models/domain/records/books.h"
#include "views/page.h"

#include <optional>

class QComboBox;
class QLineEdit;
class QPushButton;

namespace rickyard::views {

class FieldRow;
class TextLabel;
class UnitLineEdit;

class CountPanel : public QWidget
{
    Q_OBJECT

public:
    enum class Way { Stack, AsIs, Dry };

    explicit CountPanel(PageContext &context, QWidget *parent = nullptr);

    void start(domain::RecordId lot);
    void setWay(Way way);
    [[nodiscard]] Way way() const;
    // What the fields come to; missing until they are filled.
    [[nodiscard]] std::optional<domain::Mass> counted() const;
    [[nodiscard]] QString comparison() const;

Q_SIGNALS:
    void saved(qint64 id);
    void closed();

private:
    struct Measure {
        UnitLineEdit *edit = nullptr;
        FieldRow *row = nullptr;
        domain::Dimension dimension = domain::Dimension::Mass;
        QString unitKey;
    };
    Measure addMeasure(const QString &label, domain::Dimension dimension, const char *us,
                       const char *metric);
    void build();
    void showWay();
    void compare();
    void save();
    // Shows at the field what cannot be read; nothing when it is empty or wrong.
    static std::optional<qint64> read(const Measure &measure);

    PageContext &m_context;
    domain::RecordId m_lot = 0;
    QComboBox *m_way = nullptr;
    Measure m_length;
    Measure m_height;
    Measure m_depth;
    Measure m_mass;
    QLineEdit *m_note = nullptr;
    TextLabel *m_comparison = nullptr;
    TextLabel *m_basis = nullptr;
    QPushButton *m_save = nullptr;
};

} // namespace rickyard::views
