// One session with the pin meter as fields: the pieces one by one, the wood's temperature, the
// meter's scale, the face read, and what it all says on both bases.
#pragma once

#include "models/domain/outcome.h"
#include "views/page.h"

class QComboBox;

namespace rickyard::views {

class FieldRow;
class FieldSet;
class PieceChips;
class TextLabel;

class MeterFields : public QWidget
{
    Q_OBJECT

public:
    using BooksSource = std::function<domain::Books()>;

    explicit MeterFields(PageContext &context, QWidget *parent = nullptr);

    // Books that hold the lot, where it is not written yet; the yard's own otherwise.
    void setBooks(BooksSource books) { m_books = std::move(books); }
    // An empty reading of that lot, with the meter as it was set last.
    void start(domain::RecordId lot);
    [[nodiscard]] domain::RecordId lot() const { return m_lot; }
    [[nodiscard]] domain::MeterBasis basis() const;
    [[nodiscard]] domain::PieceMoistures pieces() const; // dry basis
    [[nodiscard]] domain::MoistureReading reading(domain::Instant time) const;
    [[nodiscard]] bool isEmpty() const;
    [[nodiscard]] QString summary() const;
    [[nodiscard]] PieceChips &chips() const { return *m_chips; }
    [[nodiscard]] FieldSet &fields() const { return *m_fields; }
    [[nodiscard]] QComboBox &scale() const { return *m_scale; }

    // Takes what stands in the field. False: a message stands at the field in the way.
    bool settle();
    // At the fields of a reading; those that have none here come back.
    domain::Problems showProblems(const domain::Problems &problems);
    // The lot's wood may be another one now.
    void refresh();

Q_SIGNALS:
    void changed();
    void escaped();

private:
    void build();
    [[nodiscard]] domain::Books books() const;
    [[nodiscard]] domain::Moisture dryOf(double shown) const;
    [[nodiscard]] QString judge(const QString &text, std::optional<double> value) const;
    void showSummary();
    void showScaleHelp();

    PageContext &m_context;
    BooksSource m_books;
    domain::RecordId m_lot = 0;
    PieceChips *m_chips = nullptr;
    FieldSet *m_fields = nullptr; // wood_temperature, face
    QComboBox *m_scale = nullptr;
    FieldRow *m_scaleRow = nullptr;
    TextLabel *m_mean = nullptr;
    TextLabel *m_corrected = nullptr;
    TextLabel *m_spread = nullptr;
    TextLabel *m_indicative = nullptr;
    QString m_impossible; // said at the field about a piece taken before
};

} // namespace rickyard::views
