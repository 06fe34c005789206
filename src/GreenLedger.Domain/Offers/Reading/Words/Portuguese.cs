namespace GreenLedger.Domain.Offers.Reading.Words;

/// <summary>Portuguese trade words of offer lists, from common use.</summary>
internal static class Portuguese
{
    public static ListWords Words { get; } = ListWords.Of("pt", """
        Ref: ref, referência, lote, lote nº, nº lote, número do lote, código
        Name: nome, nome do lote, café, descrição, qualidade, produto
        Producer: produtor, produtora, fazenda, sítio, propriedade, cafeicultor, cooperativa, fazenda produtor, estação
        Country: país, origem, país de origem
        Region: região, município, cidade, estado, zona, província, localidade
        Varieties: variedade, variedades, cultivar, cultivares
        Process: processo, processamento, preparo, método, tipo de processo, pós colheita
        CropYear: safra, colheita, ano safra, ano de colheita
        Grade: tipo, grau, classe, classificação
        Screen: peneira, peneiras
        Altitude: altitude, altura, elevação
        StatedScore: pontuação, pontos, nota, bebida pontuação, pontuação sca, nota sca, xícara
        Bags: sacas, sacos, nº sacas, número de sacas, quantidade de sacas, qtd sacas, volumes
        BagWeight: kg saca, kg por saca, kg saco, peso por saca, peso da saca, peso saca
        Packaging: embalagem, acondicionamento
        Quantity: quantidade, qtd, qtde, quant, volume
        NetWeight: peso líquido, kg líquidos, peso, quilos, peso kg, total kg
        Price: preço, preço fob, preço unitário, valor
        Differential: diferencial, dif
        FuturesMonth: mês de referência, bolsa, mês
        Currency: moeda
        PriceUnit: unidade, unidade de preço
        Incoterm: condição de entrega, termo
        Place: porto, local, porto de embarque, local de entrega
        ValidUntil: válido até, validade, vence
        Availability: disponível, disponibilidade, situação, status, embarque
        Certificates: certificação, certificações, certificado, certificados, selos
        IcoMark: marca oic, oic
        Moisture: umidade, humidade
        Notes: notas, observações, observação, obs, comentários, notas sensoriais, perfil, sensorial
        LeastBags: pedido mínimo, mínimo, lote mínimo, quantidade mínima, compra mínima, mínimo sacas, mínimo de sacas, sacas mínimo
        warehouse: nº armazém, número do armazém
        spot: em armazém, ex armazém, disponível no armazém
        sold: vendido, vendida, esgotado, indisponível
        withdrawn: retirado, cancelado, não
        available: sim, disponível, livre
        valid: válido até, válida até, válidos até, validade, vence
        crop: safra, colheita
        total: total, totais, soma, subtotal
        bigbag: big bag, bigbag, granel, a granel
        bag: saca, sacas, saco, sacos, caixa, caixas
        cooperative: cooperativa, coop, associação
        station: estação
        farm: fazenda, sítio
        outright: preço
        January: janeiro, jan
        February: fevereiro, fev
        March: março, mar
        April: abril, abr
        May: maio, mai
        June: junho, jun
        July: julho, jul
        August: agosto, ago
        September: setembro, set
        October: outubro, out
        November: novembro, nov
        December: dezembro, dez
        """);
}
